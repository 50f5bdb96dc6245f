/* The yardstick of bench/path.ts: minimum curvature in vector form, straightforward C with the system's libm.
   Reads what the bench wrote: int32 number of holes, int32 first station of each and one past the last,
   then depth, tangent north, east, down as columns of doubles. Prints milliseconds of CPU and a check sum. */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define ROUNDS 5

static double *column(FILE *file, size_t count) {
  double *values = malloc(count * sizeof *values);
  if (values == NULL || fread(values, sizeof *values, count, file) != count) exit(1);
  return values;
}

static int ascending(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

int main(int argc, char **argv) {
  FILE *file = argc > 1 ? fopen(argv[1], "rb") : NULL;
  int32_t holes;
  if (file == NULL || fread(&holes, sizeof holes, 1, file) != 1) return 1;
  int32_t *first = malloc((size_t)(holes + 1) * sizeof *first);
  if (first == NULL || fread(first, sizeof *first, (size_t)(holes + 1), file) != (size_t)(holes + 1)) return 1;
  size_t count = (size_t)first[holes];
  double *s = column(file, count), *tn = column(file, count), *te = column(file, count), *td = column(file, count);
  double *n = malloc(count * sizeof *n), *e = malloc(count * sizeof *e), *d = malloc(count * sizeof *d);
  if (n == NULL || e == NULL || d == NULL) return 1;
  double taken[ROUNDS];
  for (int round = 0; round < ROUNDS; round++) {
    clock_t start = clock();
    for (int32_t hole = 0; hole < holes; hole++) {
      double north = 0, east = 0, down = 0;
      for (int32_t i = first[hole]; i < first[hole + 1]; i++) {
        if (i > first[hole]) {
          double cn = te[i - 1] * td[i] - td[i - 1] * te[i];
          double ce = td[i - 1] * tn[i] - tn[i - 1] * td[i];
          double cd = tn[i - 1] * te[i] - te[i - 1] * tn[i];
          double dot = tn[i - 1] * tn[i] + te[i - 1] * te[i] + td[i - 1] * td[i];
          double beta = atan2(sqrt(cn * cn + ce * ce + cd * cd), dot);
          double ratio = beta < 1e-4 ? 1 + beta * beta / 12 : tan(beta / 2) / (beta / 2);
          double half = (s[i] - s[i - 1]) / 2 * ratio;
          north += half * (tn[i - 1] + tn[i]);
          east += half * (te[i - 1] + te[i]);
          down += half * (td[i - 1] + td[i]);
        }
        n[i] = north;
        e[i] = east;
        d[i] = down;
      }
    }
    taken[round] = (double)(clock() - start) * 1000 / CLOCKS_PER_SEC;
  }
  double sum = 0;
  for (size_t i = 0; i < count; i++) sum += n[i] + e[i] + d[i];
  qsort(taken, ROUNDS, sizeof *taken, ascending);
  printf("{ \"cpuMs\": %.3f, \"sum\": %.17g }\n", taken[ROUNDS / 2], sum);
  return 0;
}
