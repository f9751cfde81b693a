in vec3 from_eye;
in vec2 world;
in vec3 ground;
#if DETAIL < 2
in vec2 corner_bent, corner_river;
#endif
#if DETAIL == 0
in vec3 corner_light;
in vec4 corner_haze;
#endif
out vec4 colour;
uniform sampler2D grain;  // tiling: fine and coarse noise, 0 .. 1

// Colours of crops as seen, in the order of Crop; the last is a wood.
const vec3 kCrops[8] = vec3[8](vec3(0.395, 0.475, 0.265), vec3(0.520, 0.550, 0.335), vec3(0.330, 0.435, 0.225),
                               vec3(0.665, 0.600, 0.410), vec3(0.470, 0.395, 0.315), vec3(0.650, 0.640, 0.325),
                               vec3(0.470, 0.465, 0.325), vec3(0.205, 0.290, 0.180));
const int kShares[16] = int[16](0, 0, 0, 0, 0, 1, 1, 2, 2, 2, 3, 3, 4, 4, 5, 6);
const vec3 kMeanField = vec3(0.425, 0.465, 0.285);
const vec3 kHedge = vec3(0.215, 0.285, 0.175);
const vec3 kLane = vec3(0.610, 0.590, 0.545);
const vec3 kHeath = vec3(0.400, 0.385, 0.275);

// Share of a picture element's footprint f that lies within half a width of a line, d away from its middle.
float line(float d, float half_width, float f) {
  float seen = max(half_width, 0.5 * f);
  return clamp(0.5 + (seen - abs(d)) / f, 0.0, 1.0) * min(1.0, 2.0 * half_width / f);
}

// The same for a box about the origin.
float box(vec2 at, vec2 half_size, vec2 f) {
  vec2 share = clamp(0.5 + (half_size - abs(at)) / f, 0.0, 1.0);
  return share.x * share.y;
}

vec3 crop_colour(uint bits) {
  return kCrops[wooded(bits) ? 7 : kShares[bits & 15u]] * (0.90 + 0.20 * float((bits >> 16) & 255u) / 255.0);
}

vec3 field_colour(vec2 at, vec2 f, Field field) {
  vec3 crop = crop_colour(field.bits);
#if DETAIL > 0
  // Tramlines run along the field's longer side or across it.
  bool across = (field.bits & 0x1000000u) != 0u;
  float s = across ? at.y : at.x, wide = across ? f.y : f.x;
  float seen = 1.0 - smoothstep(0.25, 0.6, wide / 21.0);
  bool arable = !field.is_wood && (field.bits & 15u) >= 7u;
  crop *= 1.0 - (arable ? 0.040 : 0.006) * seen * cos(s * (6.2831853 / 21.0));
  // Along an edge both fields share the picture element.
  int other_row = field.row + (field.to_edge.x < 0.0 ? 1 : -1);
  float own = clamp(0.5 + abs(field.to_edge.x) / f.x, 0.0, 1.0);
  if (own < 1.0) {
    float share = at.y / kColumn_m;
    bool lane;
    float edge = edge_near(share, other_row, salt.x + 12u, lane);
    crop = mix(crop_colour(bits_of(other_row, int(floor(share + 0.5)) - (share < edge ? 1 : 0))), crop, own);
  }
  own = clamp(0.5 + abs(field.to_edge.y) / f.y, 0.0, 1.0);
  if (own < 1.0) crop = mix(crop_colour(bits_of(field.row, field.column + (field.to_edge.y < 0.0 ? 1 : -1))), crop, own);
#endif
  // Where a field is less than a picture element high, its neighbours show with it.
  float blend = smoothstep(0.5, 1.6, max(f.x / kRow_m, f.y / kColumn_m));
  return mix(crop, kMeanField, blend);
}

vec3 with_edges(vec3 base, vec2 f, Field field) {
  vec2 d = field.to_edge;
  vec2 hedge = vec2(line(field.is_lane.x ? abs(d.x) - 7.0 : d.x, 2.4, f.x),
                    line(field.is_lane.y ? abs(d.y) - 7.0 : d.y, 2.4, f.y));
  vec2 lane = vec2(field.is_lane.x ? line(d.x, 2.8, f.x) : 0.0, field.is_lane.y ? line(d.y, 2.8, f.y) : 0.0);
  base = mix(base, kHedge, max(hedge.x, hedge.y) * 0.9);
  return mix(base, kLane, max(lane.x, lane.y));
}

#ifdef AIRFIELD
vec3 with_airfield(vec3 base, vec2 place) {
  vec2 from_middle = place - runway.xy;
  vec2 at = vec2(dot(from_middle, runway.zw), dot(from_middle, vec2(-runway.w, runway.z)));
  vec2 f = max(fwidth(at), vec2(0.02));
  const vec3 kMown = vec3(0.440, 0.515, 0.300), kTar = vec3(0.335, 0.335, 0.345), kPaint = vec3(0.86, 0.86, 0.83);
  float stripe = (fract(at.y / 36.0) < 0.5 ? 1.0 : 0.0) * (1.0 - smoothstep(0.2, 0.5, f.y / 36.0));
  base = mix(base, kMown * (0.985 + 0.03 * stripe), box(at - vec2(0.0, 30.0), vec2(AIRFIELD_ALONG, AIRFIELD_ACROSS), f));
  float tar = box(at, vec2(RUNWAY_HALF, 10.0), f);
  tar = max(tar, box(at - vec2(60.0, 50.0), vec2(5.0, 42.0), f));
  tar = max(tar, box(at - vec2(60.0, 112.0), vec2(75.0, 22.0), f));
  base = mix(base, kTar, tar);
  float paint = box(vec2(abs(at.x) - (RUNWAY_HALF - 21.0), mod(abs(at.y) + 100.5, 3.0) - 1.5), vec2(12.0, 0.75), f) *
                step(abs(at.y), 8.6) * step(0.9, abs(at.y));
  paint = max(paint, box(vec2(mod(at.x, 40.0) - 20.0, at.y), vec2(11.0, 0.5), f) * step(abs(at.x), RUNWAY_HALF - 75.0));
  paint = max(paint, box(vec2(at.x, abs(at.y) - 9.2), vec2(RUNWAY_HALF, 0.3), f));
  paint = max(paint, box(vec2(abs(at.x) - (RUNWAY_HALF - 1.5), at.y), vec2(0.9, 9.0), f));
  return mix(base, kPaint, paint * 0.92);
}
#endif

// Light that the water gives back: of the sky, and of the sun where that is mirrored.
vec3 water(vec3 direction) {
  float grazing = 1.0 - min(1.0, direction.z);
  vec3 mirrored = mix(zenith.rgb, horizon.rgb, grazing * grazing) * (0.26 + 0.38 * grazing * grazing);
  vec3 light = vec3(0.020, 0.036, 0.042) + mirrored;
#if DETAIL > 0
  float glint = max(dot(vec3(direction.xy, -direction.z), to_sun.xyz), 0.0);
  light += sun.rgb * pow(glint, 90.0) * 0.9 * to_sun.w;
#endif
  return light;
}

void main() {
#if DETAIL < 2
  vec2 at = corner_bent, river = corner_river;
#else
  vec2 at = bent(world), river = river_at(world);
#endif
  vec2 f = max(fwidth(at), vec2(0.02));
  Field field = field_at(at);
  vec3 base = field_colour(at, f, field);
  float high = ground.x, canopy = 1.0;
#if DETAIL > 0
  vec2 fine = texture(grain, world / 83.0).rg, coarse = texture(grain, world / 2300.0).rg;
  base *= 1.0 + (field.is_wood ? 1.1 : 0.30) * (fine.x - 0.5) + 0.26 * (coarse.x - 0.5);
  high += 40.0 * (coarse.y - 0.5);
  canopy += 1.1 * (fine.x - 0.5);
#endif
#if DETAIL > 1
  base *= 1.0 + 0.26 * (texture(grain, world / 11.0).g - 0.5);
#endif
  base = with_edges(base, f, field);
  float wood = free_wood(world);
  wood = clamp(0.5 + wood / max(fwidth(wood), 0.02), 0.0, 1.0);
  base = mix(base, kCrops[7] * canopy, wood * 0.97);
  base = mix(base, kHeath * (base.g / 0.44 * 0.35 + 0.65), smoothstep(55.0, 130.0, high));
#ifdef AIRFIELD
  base = with_airfield(base, world);
#endif
  float across = max(f.y, f.x * 0.6);
  base = mix(base, kHedge * 1.15, line(river.x, river.y + 9.0, across) * 0.8);
  float wet = line(river.x, river.y, across);
#if DETAIL == 0
  vec3 light = mix(base * base * corner_light, water(normalize(from_eye)), wet);
  colour = vec4(shown(mix(corner_haze.rgb, light, corner_haze.a)), 1.0);
#else
  vec3 light = mix(base * base * lit(relief_normal(ground), to_sun.xyz), water(normalize(from_eye)), wet);
  colour = vec4(shown(fogged(light, from_eye)), 1.0);
#endif
}
