#pragma once
#include <array>

#include "aircraft/math/elementary.hpp"

/// Three-component vectors and 3 x 3 matrices over any number type of the state path.
namespace stallwright::math {

template <class T>
struct Vec3 {
  T x{}, y{}, z{};

  constexpr Vec3& operator+=(const Vec3& b) { return *this = *this + b; }
  constexpr Vec3& operator-=(const Vec3& b) { return *this = *this - b; }
  constexpr Vec3& operator*=(const T& s) { return *this = *this * s; }
  friend constexpr Vec3 operator+(const Vec3& a, const Vec3& b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
  friend constexpr Vec3 operator-(const Vec3& a, const Vec3& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
  friend constexpr Vec3 operator-(const Vec3& a) { return {-a.x, -a.y, -a.z}; }
  friend constexpr Vec3 operator*(const Vec3& a, const T& s) { return {a.x * s, a.y * s, a.z * s}; }
  friend constexpr Vec3 operator*(const T& s, const Vec3& a) { return a * s; }
  friend constexpr Vec3 operator/(const Vec3& a, const T& s) { return {a.x / s, a.y / s, a.z / s}; }
  friend bool operator==(const Vec3&, const Vec3&) = default;
};

template <class T>
constexpr T dot(const Vec3<T>& a, const Vec3<T>& b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
template <class T>
constexpr Vec3<T> cross(const Vec3<T>& a, const Vec3<T>& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
/// Square of the length.
template <class T>
constexpr T norm2(const Vec3<T>& a) {
  return dot(a, a);
}
template <class T>
inline T norm(const Vec3<T>& a) {
  return sqrt(norm2(a));
}

/// Matrix m[row * 3 + column].
template <class T>
struct Mat3 {
  std::array<T, 9> m{};

  static constexpr Mat3 identity() { return diagonal(T(1.0), T(1.0), T(1.0)); }
  static constexpr Mat3 diagonal(const T& a, const T& b, const T& c) {
    const T o(0.0);
    return {{a, o, o, o, b, o, o, o, c}};
  }
  constexpr const T& operator()(int row, int column) const { return m[row * 3 + column]; }
  constexpr T& operator()(int row, int column) { return m[row * 3 + column]; }
  constexpr Vec3<T> row(int i) const { return {m[i * 3], m[i * 3 + 1], m[i * 3 + 2]}; }
  constexpr Vec3<T> column(int j) const { return {m[j], m[3 + j], m[6 + j]}; }

  friend constexpr Vec3<T> operator*(const Mat3& a, const Vec3<T>& v) {
    return {dot(a.row(0), v), dot(a.row(1), v), dot(a.row(2), v)};
  }
  friend constexpr Mat3 operator*(const Mat3& a, const Mat3& b) {
    Mat3 product;
    for (int i = 0; i < 3; ++i)
      for (int j = 0; j < 3; ++j) product(i, j) = dot(a.row(i), b.column(j));
    return product;
  }
  friend bool operator==(const Mat3&, const Mat3&) = default;
};

template <class T>
constexpr Mat3<T> transpose(const Mat3<T>& a) {
  return {{a(0, 0), a(1, 0), a(2, 0), a(0, 1), a(1, 1), a(2, 1), a(0, 2), a(1, 2), a(2, 2)}};
}
template <class T>
constexpr T determinant(const Mat3<T>& a) {
  return dot(a.row(0), cross(a.row(1), a.row(2)));
}
/// Inverse by the adjugate; a singular matrix gives infinities or NaN.
template <class T>
constexpr Mat3<T> inverse(const Mat3<T>& a) {
  const Vec3<T> c0 = cross(a.row(1), a.row(2)), c1 = cross(a.row(2), a.row(0)),
                c2 = cross(a.row(0), a.row(1));
  const T s = T(1.0) / dot(a.row(0), c0);
  return {{c0.x * s, c1.x * s, c2.x * s, c0.y * s, c1.y * s, c2.y * s, c0.z * s, c1.z * s, c2.z * s}};
}
/// x with a x = b (Cramer's rule), for well-conditioned matrices such as an inertia tensor.
template <class T>
constexpr Vec3<T> solve(const Mat3<T>& a, const Vec3<T>& b) {
  return inverse(a) * b;
}

}  // namespace stallwright::math
