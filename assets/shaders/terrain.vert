layout(location = 0) in vec2 place;  // from the chunk's south-west corner, m
layout(location = 1) in vec3 shape;  // height, m; slope to the north, to the east
uniform vec4 corner;                 // of the chunk: north, east from the eye; north, east in the world
out vec3 from_eye;
out vec2 world;
out vec3 ground;
#if DETAIL < 2
// What bends slowly is computed for corners only. Over a cell near the eye that is right to a fraction of a metre.
out vec2 corner_bent, corner_river;
#endif
#if DETAIL == 0
out vec3 corner_light;
out vec4 corner_haze;  // colour, and how much of the ground shows through it
#endif

void main() {
  from_eye = vec3(corner.xy + place, eye.z - shape.x);
  world = corner.zw + place;
  ground = shape;
  gl_Position = clip_from_E * vec4(from_eye, 1.0);
#if DETAIL < 2
  corner_bent = bent(world);
  corner_river = river_at(world);
#endif
#if DETAIL == 0
  float distance = length(from_eye);
  corner_light = lit(relief_normal(shape), to_sun.xyz);
  corner_haze = vec4(haze_towards(from_eye / distance), exp(-haze.w * distance));
#endif
}
