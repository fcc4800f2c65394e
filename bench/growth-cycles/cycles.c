/* The arithmetic of kernels/assembly/growth-cycles.ts, line by line, in C: the yardstick of speed. Built by the bench with
   cc -O3 -ffp-contract=off. Usage: cycles FILE RUNS; FILE holds 36 doubles, then peaks, then troughs. Prints the least
   processor time of the runs, ns, and the record as left. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define PI 3.141592653589793

static inline double tip(double c, double surface, double front, double s, double bent, double slant) {
  double d = 1.0 + c * slant;
  double d2 = d * d;
  double falls = (2.156 + d * (-1.578 + d * (1.425 + d * (0.358 + d)))) / (d2 * (d2 + 0.13));
  double g = (1.0 + surface * s) * bent * falls;
  return g * g * sqrt(front);
}
static inline double shallow24(double left) {
  double p3 = left * left * left;
  double p6 = p3 * p3;
  double p12 = p6 * p6;
  return 14.0 * p12 * p12;
}
static inline double lowered(double k2, double ratio, double rest, double threshold, double shut, double n, double m) {
  double kmax = sqrt(k2);
  double phi = (1.0 - threshold / kmax) / shut;
  if (!(phi > 0.0)) phi = 0.0;
  double less = phi * (rest - kmax);
  double felt = kmax - less;
  if (felt <= 0.0) return 0.0;
  double least = ratio * kmax - less;
  double bent = least > 0.0 ? m * log(1.0 - least / felt) : 0.0;
  return exp(n * (bent + log(felt)));
}

static void run(double *io, const double *peaks, const double *troughs, size_t length) {
  const double r2 = io[0], b4 = io[1], per_thickness = io[2], cracks = io[3], scale = io[4], share = io[5];
  const double longest = io[6], law_c = io[7], law_n = io[8], law_m = io[9];
  const double acting = io[10], first = io[11], second = io[12], zone = io[13];
  const double until_c = io[14], until_a = io[15], until_cycles = io[16];
  const double cs = io[17], cbent = io[18], cslant = io[19], ccos2 = io[20], csin2 = io[21];
  const double as = io[22], abent = io[23], aslant = io[24], acos2 = io[25], asin2 = io[26];
  double cycles = io[27], c = io[28], a = io[29];
  double cat = io[30], czone = io[31], ck = io[32], aat = io[33], azone = io[34], ak = io[35];
  double cend = cat + czone, aend = aat + azone;
  const double arc = 4.0 / PI, half_n = 0.5 * law_n, reach_c = 2.0 * cracks - 4.0;
  size_t at = (size_t)(cycles - floor(cycles / (double)length) * (double)length);

  while (cycles < until_cycles && c < until_c && a < until_a) {
    const double high = peaks[at], low = troughs[at];
    if (++at == length) at = 0;
    if (high > 0.0) {
      const int deep = a > c;
      const double x = deep ? c / a : a / c;
      if (x < (deep ? 0.5 : 0.2) || c > longest) break;
      const double x2 = x * x, v = a * per_thickness, v2 = v * v, root_v = sqrt(v);
      const double q = 1.0 + 1.464 * exp(1.65 * log(x));
      const double reach = (PI * (r2 + cracks * c)) / (b4 + reach_c * c);
      const double part = a * c * share;
      const double root = (scale * a * (arc + 0.5 * part)) / (q * cos(reach * root_v) * (arc + part));
      double series, surface, front_c, front_a;
      if (deep) {
        const double x4v2 = x2 * x2 * v2;
        series = (sqrt(x) * (1.0 + 0.04 * x) + x4v2 * (0.2 - 0.11 * v2)) * (1.13 - 0.09 * x);
        surface = 0.1 + 0.35 * x * v2;
        front_c = ccos2 + x2 * csin2;
        front_a = acos2 + x2 * asin2;
      } else {
        const double m2 = -0.54 + 0.89 / (0.2 + x);
        const double m3 = 0.5 - 1.0 / (0.65 + x) + shallow24(1.0 - x);
        series = (1.13 - 0.09 * x + v2 * (m2 + v2 * m3)) * (1.0 + 0.04 * x) *
                 (1.0 - 0.7 * (1.0 - v) * (x - 0.2) * (1.0 - x));
        surface = 0.1 + 0.35 * v2;
        front_c = x2 * ccos2 + csin2;
        front_a = x2 * acos2 + asin2;
      }
      series *= 0.85 + 0.15 * sqrt(root_v);
      const double shared = root * series * series * (high * high);
      const double c2 = shared * tip(c, surface, front_c, cs, cbent, cslant);
      const double a2 = shared * tip(c, surface, front_a, as, abent, aslant);
      const double ratio = low / high;
      const double weight = low > 0.0 ? law_n * law_m * log(1.0 - ratio) : 0.0;
      double dc, da;
      if (acting == 0.0) {
        dc = law_c * exp(weight + half_n * log(c2));
        da = law_c * exp(weight + half_n * log(a2));
      } else {
        const double cown = zone * c2, aown = zone * a2;
        if (c + cown < cend) {
          if (acting == 1.0) dc = law_c * exp(weight + half_n * log(c2) + first * log(cown / (cend - c)));
          else dc = law_c * lowered(c2, ratio, ck * sqrt(1.0 - (c - cat) / czone), first, second, law_n, law_m);
        } else {
          dc = law_c * exp(weight + half_n * log(c2));
          cat = c;
          czone = cown;
          cend = c + cown;
          ck = sqrt(c2);
        }
        if (a + aown < aend) {
          if (acting == 1.0) da = law_c * exp(weight + half_n * log(a2) + first * log(aown / (aend - a)));
          else da = law_c * lowered(a2, ratio, ak * sqrt(1.0 - (a - aat) / azone), first, second, law_n, law_m);
        } else {
          da = law_c * exp(weight + half_n * log(a2));
          aat = a;
          azone = aown;
          aend = a + aown;
          ak = sqrt(a2);
        }
      }
      if (!(dc + da < INFINITY)) break;
      c += dc;
      a += da;
    }
    cycles += 1.0;
  }
  io[27] = cycles; io[28] = c; io[29] = a;
  io[30] = cat; io[31] = czone; io[32] = ck; io[33] = aat; io[34] = azone; io[35] = ak;
}

static double now_ns(void) {
  struct timespec t;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
  return 1e9 * (double)t.tv_sec + (double)t.tv_nsec;
}

int main(int argc, char **argv) {
  if (argc != 3) return 2;
  FILE *file = fopen(argv[1], "rb");
  if (!file) return 1;
  fseek(file, 0, SEEK_END);
  size_t doubles = (size_t)ftell(file) / sizeof(double);
  rewind(file);
  double *all = malloc(doubles * sizeof(double));
  if (!all || fread(all, sizeof(double), doubles, file) != doubles) return 1;
  fclose(file);
  size_t length = (doubles - 36) / 2;
  double io[36], best = 1e300;
  for (int i = 0; i < atoi(argv[2]); i++) {
    memcpy(io, all, sizeof io);
    double before = now_ns();
    run(io, all + 36, all + 36 + length, length);
    double took = now_ns() - before;
    if (took < best) best = took;
  }
  printf("%.17g", best);
  for (int i = 27; i < 36; i++) printf(" %.17g", io[i]);
  printf("\n");
  return 0;
}
