// Defects, each with the check that must report it in that line. Never compiled: run.sh --planted puts this text into a
// copy of a unit and looks at what clang-tidy says.
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace plumbrule::planted_apart {
struct Unused {};
}  // namespace plumbrule::planted_apart

namespace plumbrule::planted {
using planted_apart::Unused;  // plants misc-unused-using-decls
namespace {

struct Base {
  Base() = default;
  virtual ~Base() = default;
  virtual int depth() const { return 0; }  // plants modernize-use-nodiscard
};
struct Derived : Base {
  [[nodiscard]] virtual int depth() const { return 1; }  // plants modernize-use-override
};

int null_dereference(const int* place) {
  if (place == nullptr) {
    return *place;  // plants clang-analyzer-core.NullDereference
  }
  return 0;
}

int divide_zero(int by) {
  if (by == 0) {
    return 5 / by;  // plants clang-analyzer-core.DivideZero
  }
  return by;
}

int leak() {
  int* kept = new int(3);
  return *kept;  // plants clang-analyzer-cplusplus.NewDeleteLeaks
}

int* nothing() { return NULL; }  // plants modernize-use-nullptr

std::size_t use_after_move() {
  std::string text = "a long text that is moved away from here";
  const std::string other = std::move(text);
  return text.size() + other.size();  // plants bugprone-use-after-move
}

double integer_division(int a, int b) {
  const double share = a / b;  // plants bugprone-integer-division
  return share;
}

bool redundant(int a, int b) { return a - b > 1 && a - b > 1; }  // plants misc-redundant-expression

std::size_t range_copy(const std::vector<std::string>& texts) {
  std::size_t sum = 0;
  for (const auto one : texts) {  // plants performance-for-range-copy
    sum += one.size();
  }
  return sum;
}

std::size_t value_param(const std::string text) { return text.size(); }  // plants performance-unnecessary-value-param

int unused_parameter(int used, int unused) { return used; }  // plants misc-unused-parameters

int long_one(int total) {  // plants readability-function-size
  total += 1;
  total += 2;
  total += 3;
  total += 4;
  total += 5;
  total += 6;
  total += 7;
  total += 8;
  total += 9;
  total += 10;
  total += 11;
  total += 12;
  total += 13;
  total += 14;
  total += 15;
  total += 16;
  total += 17;
  total += 18;
  total += 19;
  total += 20;
  total += 21;
  total += 22;
  total += 23;
  total += 24;
  total += 25;
  total += 26;
  total += 27;
  total += 28;
  total += 29;
  total += 30;
  total += 31;
  total += 32;
  total += 33;
  total += 34;
  total += 35;
  total += 36;
  total += 37;
  total += 38;
  total += 39;
  total += 40;
  total += 41;
  total += 42;
  total += 43;
  total += 44;
  total += 45;
  total += 46;
  total += 47;
  total += 48;
  total += 49;
  total += 50;
  total += 51;
  total += 52;
  total += 53;
  total += 54;
  total += 55;
  total += 56;
  total += 57;
  total += 58;
  total += 59;
  total += 60;
  total += 61;
  total += 62;
  total += 63;
  total += 64;
  total += 65;
  total += 66;
  total += 67;
  total += 68;
  total += 69;
  return total;
}

}  // namespace

long use_all(const std::vector<std::string>& texts) {
  return null_dereference(nullptr) + divide_zero(0) + leak() + (nothing() == nullptr ? 1 : 0) +
         static_cast<long>(use_after_move()) + static_cast<long>(integer_division(1, 2)) + (redundant(1, 2) ? 1 : 0) +
         static_cast<long>(range_copy(texts) + value_param("x")) + unused_parameter(1, 2) + long_one(1) +
         Derived().depth();
}

}  // namespace plumbrule::planted
