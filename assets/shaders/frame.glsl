// What is the same for everything drawn in one frame; render/outside/frame.hpp has the same layout.
// Axes: E north-east-down from the eye. Colours are linear; shown() makes them visible.
layout(std140) uniform Frame {
  mat4 clip_from_E;
  mat4 clip_from_B;
  vec4 ray_right, ray_up, ray_ahead;  // E, of the picture's edge at distance 1
  vec4 eye;                           // north, east, height over the terrain's level, m; time, s
  vec4 to_sun;                        // E, unit; w: 0 under cloud .. 1
  vec4 to_sun_B;
  vec4 sun, sky, zenith, horizon, haze, glow;  // haze.w: extinction per m
  vec4 phase_low, phase_high;         // of the land's waves
  vec4 runway;                        // middle north, east; cosine and sine of its heading
  uvec4 salt;
};

vec3 shown(vec3 linear) { return sqrt(max(linear, 0.0)); }

// What ground far away fades into, in this direction.
vec3 haze_towards(vec3 direction) {
  float toward = max(dot(direction, to_sun.xyz), 0.0);
  float narrow = toward * toward * toward;
  return haze.rgb + glow.rgb * (0.45 * narrow * narrow);
}

vec3 fogged(vec3 colour, vec3 from_eye) {
  float distance = length(from_eye);
  return mix(haze_towards(from_eye / distance), colour, exp(-haze.w * distance));
}

// Light on a surface with this normal (E or B, as the sun's direction).
vec3 lit(vec3 normal, vec3 towards_sun) {
  return sky.rgb * (0.72 - 0.28 * normal.z) + sun.rgb * max(dot(normal, towards_sun), 0.0);
}

// Slopes of the ground are shown steeper than they are, for relief in flat light.
vec3 relief_normal(vec3 ground) { return normalize(vec3(-2.8 * ground.yz, -1.0)); }
