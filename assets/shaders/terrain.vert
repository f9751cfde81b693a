layout(location = 0) in vec2 place;  // from the chunk's south-west corner, m
layout(location = 1) in vec3 shape;  // height, m; slope to the north, to the east
uniform vec4 corner;                 // of the chunk: north, east from the eye; north, east in the world
out vec3 from_eye;
out vec2 world;
out vec3 ground;

void main() {
  from_eye = vec3(corner.xy + place, eye.z - shape.x);
  world = corner.zw + place;
  ground = shape;
  gl_Position = clip_from_E * vec4(from_eye, 1.0);
}
