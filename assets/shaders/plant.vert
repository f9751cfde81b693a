layout(location = 0) in vec3 place;  // north, east from the square's corner; height of the ground
layout(location = 1) in vec2 kind;   // radius, m; tint
uniform vec2 corner;                 // of the square, from the eye
out vec3 from_eye;
out vec2 at;
out float tint;
flat out vec3 sun_here;  // to the sun: right, up, towards the eye

void main() {
  at = vec2(gl_VertexID % 2 == 0 ? -1.0 : 1.0, gl_VertexID < 2 ? -1.0 : 1.0);
  vec3 foot = vec3(corner + place.xy, eye.z - place.z);
  float distance = length(foot);
  // Small ones are drawn less far; all grow in where they begin, so that none springs up.
  float reach = 1500.0 * min(1.0, 0.22 + kind.x / 6.0);
  float radius = kind.x * (1.0 - smoothstep(0.72, 1.0, distance / reach));
  vec3 middle = foot - vec3(0.0, 0.0, 0.9 * radius);
  vec3 sight = normalize(middle);
  vec3 right = normalize(vec3(-sight.y, sight.x, 0.0));
  vec3 up = cross(sight, right);
  up = up.z > 0.0 ? -up : up;
  from_eye = middle + (right * at.x + up * at.y) * radius;
  tint = kind.y;
  sun_here = vec3(dot(right, to_sun.xyz), dot(up, to_sun.xyz), -dot(sight, to_sun.xyz));
  gl_Position = radius > 0.01 ? clip_from_E * vec4(from_eye, 1.0) : vec4(2.0, 2.0, 2.0, 1.0);
}
