# What is installed, and the Debian packages: the program with its rules, the library, and what is needed to build
# against it.
# Where Debian looks for libraries, under any prefix.
if(CMAKE_LIBRARY_ARCHITECTURE)
  set(CMAKE_INSTALL_LIBDIR lib/${CMAKE_LIBRARY_ARCHITECTURE} CACHE PATH "libraries")
endif()
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

# The man page and the completions, which the program writes itself.
set(written ${CMAKE_CURRENT_BINARY_DIR}/written)
file(MAKE_DIRECTORY ${written})
add_custom_command(
  OUTPUT ${written}/plumbrule.1.gz ${written}/plumbrule ${written}/_plumbrule ${written}/plumbrule.fish
  COMMAND plumbrule manual --form man --out ${written}/plumbrule.1
  COMMAND gzip -9nf ${written}/plumbrule.1
  COMMAND plumbrule manual --form bash --out ${written}/plumbrule
  COMMAND plumbrule manual --form zsh --out ${written}/_plumbrule
  COMMAND plumbrule manual --form fish --out ${written}/plumbrule.fish
  DEPENDS plumbrule
  VERBATIM)
add_custom_target(plumbrule_written DEPENDS ${written}/plumbrule.1.gz)
add_custom_target(plumbrule_package ALL DEPENDS plumbrule plumbrule_library plumbrule_written)
if(PLUMBRULE_SANITIZE OR PLUMBRULE_FUZZ)
  set_target_properties(plumbrule_package plumbrule_written PROPERTIES EXCLUDE_FROM_ALL TRUE)
endif()

install(TARGETS plumbrule COMPONENT program)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/specs DESTINATION ${CMAKE_INSTALL_DATADIR}/plumbrule COMPONENT program)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/grammar/ DESTINATION ${CMAKE_INSTALL_DATADIR}/plumbrule/schemas
        COMPONENT program FILES_MATCHING PATTERN "*.schema.json")
install(FILES ${written}/plumbrule.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
install(FILES ${written}/plumbrule DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions COMPONENT program)
install(FILES ${written}/_plumbrule DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions COMPONENT program)
install(FILES ${written}/plumbrule.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d
        COMPONENT program)

install(TARGETS plumbrule_library EXPORT plumbrule_targets
        LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT library NAMELINK_COMPONENT development)
target_include_directories(plumbrule_library INTERFACE $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}>)
target_compile_features(plumbrule_library INTERFACE cxx_std_20)
install(DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR}/plumbrule DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT development)
set(config_folder ${CMAKE_INSTALL_LIBDIR}/cmake/plumbrule)
install(EXPORT plumbrule_targets NAMESPACE plumbrule:: DESTINATION ${config_folder} COMPONENT development
        FILE plumbrule-config.cmake)
write_basic_package_version_file(${CMAKE_CURRENT_BINARY_DIR}/plumbrule-config-version.cmake
                                 COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/plumbrule-config-version.cmake DESTINATION ${config_folder}
        COMPONENT development)
configure_file(package/plumbrule.pc.in plumbrule.pc @ONLY)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/plumbrule.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig
        COMPONENT development)

# Each package has its copyright and its list of changes.
foreach(pair program=plumbrule library=libplumbrule${PROJECT_VERSION_MAJOR} development=libplumbrule-dev)
  string(REPLACE "=" ";" pair ${pair})
  list(GET pair 0 component)
  list(GET pair 1 package)
  set(folder ${CMAKE_CURRENT_BINARY_DIR}/package/${package})
  configure_file(package/changelog.in ${folder}/changelog @ONLY)
  execute_process(COMMAND gzip -9nf ${folder}/changelog COMMAND_ERROR_IS_FATAL ANY)
  install(FILES ${folder}/changelog.gz package/copyright DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/${package}
          COMPONENT ${component})
endforeach()

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME plumbrule)
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_CONTACT "The authors of Plumbrule <plumbrule@example.org>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_PACKAGE_DIRECTORY ${PROJECT_BINARY_DIR}/packages)
set(CPACK_COMPONENTS_ALL program library development)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE
                                                WORLD_READ WORLD_EXECUTE)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME plumbrule)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION science)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_NAME libplumbrule${PROJECT_VERSION_MAJOR})
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SECTION libs)
file(WRITE ${CMAKE_CURRENT_BINARY_DIR}/package/triggers "activate-noawait ldconfig\n")
file(WRITE ${CMAKE_CURRENT_BINARY_DIR}/package/shlibs
     "libplumbrule ${PROJECT_VERSION_MAJOR} libplumbrule${PROJECT_VERSION_MAJOR} (= ${PROJECT_VERSION})\n")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_CONTROL_EXTRA ${CMAKE_CURRENT_BINARY_DIR}/package/triggers
                                               ${CMAKE_CURRENT_BINARY_DIR}/package/shlibs)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_CONTROL_STRICT_PERMISSION ON)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libplumbrule-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SHLIBDEPS OFF)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS "libplumbrule${PROJECT_VERSION_MAJOR} (= ${PROJECT_VERSION})")
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION
    "check trial results of pavement mixes against agency limits
Reviews the trial results of cold-laid emulsion mixes (slurry seal, micro
surfacing) against the limits of an agency's specification, written as
readable rule files, and explains every verdict.")
set(CPACK_COMPONENT_LIBRARY_DESCRIPTION
    "check trial results of pavement mixes (shared library)
The library that reads rule files and submittals, reviews them, and makes
reports, without printing anything.")
set(CPACK_COMPONENT_DEVELOPMENT_DESCRIPTION
    "check trial results of pavement mixes (development files)
Headers for C++ and C, and what CMake and pkg-config need to build against
the library.")
include(CPack)
