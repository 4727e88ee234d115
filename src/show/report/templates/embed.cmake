# Writes the templates of this folder as constants: finding.html becomes templates::finding, page.css becomes
# templates::page_css, wrapped as a style element so that no hole has to stand inside one.
# Usage: cmake -D FOLDER=... -D OUTPUT=... -P embed.cmake
file(GLOB files ${FOLDER}/*.html ${FOLDER}/*.css)
list(SORT files)
set(text "// Written by CMake from src/show/report/templates.\n#pragma once\n#include \"show/report/parts/markup.hpp\"\n\n")
string(APPEND text "namespace plumbrule::report::templates {\n")
foreach(file ${files})
  get_filename_component(name ${file} NAME_WE)
  get_filename_component(kind ${file} EXT)
  file(READ ${file} content)
  if(kind STREQUAL ".css")
    set(name ${name}_css)
    set(content "<style>\n${content}</style>")
  endif()
  string(APPEND text "inline constexpr Template ${name}{R\"~template~(${content})~template~\"};\n")
endforeach()
string(APPEND text "}  // namespace plumbrule::report::templates\n")
file(WRITE ${OUTPUT} "${text}")
