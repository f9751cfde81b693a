layout(location = 0) in vec3 base;  // middle of the base from the eye: north, east, up
layout(location = 1) in vec2 size;  // half width, height
layout(location = 2) in vec3 kind;  // picture, mirrored, cover
out vec3 from_eye;
out vec3 where;    // in the picture, and which
out float cover;
flat out vec3 sun_here;  // to the sun: right, up, towards the eye

void main() {
  vec2 corner = vec2(gl_VertexID % 2 == 0 ? -1.0 : 1.0, gl_VertexID / 2);
  // Upright and across the line of sight; seen from below or above it leans to meet the eye halfway.
  vec3 sight = normalize(vec3(base.xy, -base.z - 0.5 * size.y));
  vec2 level = normalize(base.xy);
  vec3 right = vec3(-level.y, level.x, 0.0);
  vec3 facing = normalize(vec3(sight.xy, 0.45 * sight.z));
  vec3 up = cross(facing, right);
  up = up.z > 0.0 ? -up : up;
  from_eye = vec3(base.xy, -base.z) + right * (corner.x * size.x) + up * (corner.y * size.y);
  where = vec3(0.5 + 0.5 * corner.x * kind.y, corner.y, kind.x);
  cover = kind.z;
  sun_here = vec3(dot(right, to_sun.xyz) * kind.y, -to_sun.z, -dot(facing, to_sun.xyz));
  gl_Position = clip_from_E * vec4(from_eye, 1.0);
}
