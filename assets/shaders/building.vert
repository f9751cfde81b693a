layout(location = 0) in vec4 corner;  // -1 .. 1 along and across; 0 .. 1 of the wall and of the roof
layout(location = 1) in vec2 face;    // 0 side wall, 1 end wall, 2 roof; -1 or 1
layout(location = 2) in vec3 place;   // north, east; height of the ground
layout(location = 3) in vec2 along;   // unit
layout(location = 4) in vec4 size;    // half length, half width, wall, roof, m
layout(location = 5) in vec2 kind;    // 0 barn, 1 house, 2 hangar; tint
uniform vec3 eye_place;
out vec3 from_eye;
out vec3 light;

vec3 wall_paint() {
  if (kind.x > 1.5) return vec3(0.62, 0.64, 0.63);
  if (kind.x > 0.5) return mix(vec3(0.74, 0.70, 0.62), vec3(0.60, 0.45, 0.37), step(0.6, kind.y));
  return mix(vec3(0.42, 0.36, 0.30), vec3(0.52, 0.50, 0.45), kind.y);
}

vec3 roof_paint() {
  if (kind.x > 1.5) return vec3(0.50, 0.53, 0.53);
  if (kind.x > 0.5) return mix(vec3(0.50, 0.31, 0.25), vec3(0.36, 0.35, 0.36), kind.y);
  return mix(vec3(0.45, 0.44, 0.43), vec3(0.40, 0.29, 0.25), kind.y);
}

void main() {
  vec2 across = vec2(-along.y, along.x);
  vec2 level = along * corner.x * size.x + across * corner.y * size.y;
  float up = corner.z * size.z + corner.w * size.w - (corner.z == 0.0 ? 2.0 : 0.0);
  from_eye = vec3(place.xy - eye_place.xy + level, eye_place.z - place.z - up);
  vec3 normal = vec3(across * face.y, 0.0);
  if (face.x > 0.5) normal = vec3(along * face.y, 0.0);
  if (face.x > 1.5) normal = normalize(vec3(across * face.y * size.w, -size.y));
  vec3 paint = face.x > 1.5 ? roof_paint() : wall_paint();
  light = paint * paint * lit(normal, to_sun.xyz);
  gl_Position = clip_from_E * vec4(from_eye, 1.0);
}
