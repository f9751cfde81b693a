// Fields, river and lanes: what render/outside/land.cpp computes, for the colours of the ground.
uint mixed_bits(int i, int j, uint s) {
  uint h = uint(i) * 0x9E3779B1u ^ s;
  h = (h ^ (h >> 15)) * 0x2C1B3C6Du + uint(j) * 0x85EBCA77u;
  h = (h ^ (h >> 13)) * 0x297A2D39u;
  return h ^ (h >> 16);
}

float mixed_share(int i, int j, uint s) { return float(mixed_bits(i, j, s)) / 4294967296.0; }

const float kRow_m = 215.0, kColumn_m = 290.0;
const int kLaneEvery = 6;

vec2 bent(vec2 place) {
  float n = place.x, e = place.y;
  return vec2(n + 210.0 * sin(e / 1500.0 + phase_low.x) + 52.0 * sin((n + e) / 520.0 + phase_low.y),
              e + 210.0 * sin(n / 1500.0 + phase_low.z) + 52.0 * sin((n - e) / 520.0 + phase_low.w));
}

struct Field {
  vec2 to_edge;   // north, east, m
  bvec2 is_lane;
  uint bits;
  bool is_wood;
  int row, column;
};

float edge_near(float share, int other, uint s, out bool lane) {
  int i = int(floor(share + 0.5));
  lane = (i % kLaneEvery) == 0;
  return float(i) + (lane ? 0.0 : 0.6 * mixed_share(i, other, s) - 0.3);
}

bool edge_missing(int column, int row) {
  return column % 2 != 0 && column % kLaneEvery != 0 && mixed_bits(column, row, salt.x + 14u) % 100u < 38u;
}

// A field's own number, from which its crop follows.
uint bits_of(int row, int column) {
  return mixed_bits(row, edge_missing(column, row) ? column - 1 : column, salt.x + 13u);
}

bool wooded(uint bits) { return (bits >> 8) % 100u < 9u; }

float free_wood(vec2 place) {
  float n = place.x, e = place.y;
  return 0.85 * (sin(n / 330.0 + phase_high.z) + sin(e / 410.0 + phase_high.w) + sin((n + e) / 270.0 + phase_low.x) +
                 sin((n - 1.3 * e) / 610.0 + phase_low.z)) +
         0.60 * (sin((1.2 * n + 0.5 * e) / 131.0 + phase_low.y) + sin((0.4 * n - e) / 113.0 + phase_low.w)) +
         0.38 * (sin((n + 0.3 * e) / 43.0 + phase_high.x) + sin((e - 0.4 * n) / 37.0 + phase_high.y)) - 2.75;
}

Field field_at(vec2 at) {
  Field field;
  float y = at.x / kRow_m, x = at.y / kColumn_m;
  float row_edge = edge_near(y, int(floor(x / float(kLaneEvery))), salt.x + 11u, field.is_lane.x);
  int row = int(floor(y + 0.5)) - (y < row_edge ? 1 : 0);
  float column_edge = edge_near(x, row, salt.x + 12u, field.is_lane.y);
  int column = int(floor(x + 0.5)) - (x < column_edge ? 1 : 0);
  field.to_edge = vec2((y - row_edge) * kRow_m, (x - column_edge) * kColumn_m);
  int near_edge = int(floor(x + 0.5));
  if (edge_missing(near_edge, row)) field.to_edge.y = kColumn_m;
  field.bits = bits_of(row, column);
  field.row = row;
  field.column = column;
  field.is_wood = wooded(field.bits);
  return field;
}

// Offset from the river's middle and half its width, m.
vec2 river_at(vec2 place) {
  float a = place.x / 2400.0 + phase_high.x, b = place.x / 760.0 + phase_high.y;
  float offset = place.y - (3500.0 + 800.0 * sin(a) + 240.0 * sin(b));
  float slope = 800.0 / 2400.0 * cos(a) + 240.0 / 760.0 * cos(b);
  offset -= 24000.0 * floor(offset / 24000.0 + 0.5);
  float along = place.x - 4600.0;
  along -= 15000.0 * floor(along / 15000.0 + 0.5);
  float lake = max(0.0, 1.0 - along * along / (750.0 * 750.0));
  return vec2(offset * inversesqrt(1.0 + slope * slope), 13.0 + 230.0 * lake * lake);
}
