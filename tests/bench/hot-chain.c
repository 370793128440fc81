/*
 * The hot chain of the forecast in plain C, to measure the engine against: the soil column and a floor hour by hour, the reserve and
 * the heat dose of the crowns, then growth day by day, for one stretch of turf in many members. The same arithmetic in the same order as
 * src/engine/heat/climate.ts, soil-sweep.ts, src/engine/injury and src/engine/recovery/advance-days.ts, for thawed ground and turf
 * without sod or seed. Reads one file of doubles, written by hot-chain.ts; prints the best time of several rounds and three sums.
 *
 *     gcc -O2 -o hot-chain hot-chain.c -lm && ./hot-chain <file> <rounds>
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define CELLS 32
#define KELVIN 273.15
enum { COVER, CROWNS, RESERVE, DENSITY, NITROGEN = 6, CLOCK, FED_LEAF = 41, FED_CROWNS = 42, STAND = 43, DRIVER = 7 };

typedef struct {
  double nodes, store[2], link[2], airLink[2], sun[2], topArea, openArea, canopySun, gapLink, vapourShare, shadedLeaf, mistCanopy, sky,
      wind, cells, sweepLink, own[CELLS], fromBelow[CELLS], q[CELLS];
} Floor;
typedef struct {
  double step, canopyStore, emissivity, leafResistance, still, windy, pressure, deep, upper;
} Settings;
typedef struct {
  double warmth, daily, gainScale, halfLight, sealTemperature, sealWarm, sealCold, growthBase, dormantSpan, dormantShare, optimum, width;
} Rates;
typedef struct {
  double halfLeaf, leafSpread, halfCrowns, crownsSpread, growthOptimum, growthSpread, plateau, growthStop, leafRate, spreadRate, rateLimit,
      lightNeed, nitrogenUse, nitrogenUnfed, nitrogenFull, ground, clockWarmth, clockReference, clockLight, clockUnwind;
} Traits;
typedef struct {
  double halfKill, decade, steepness;
} Heat;

static double temperature[CELLS], p[CELLS], canopy, top, base;
static double stand[STAND];

static double blackBody(double t) {
  double square = (t + KELVIN) * (t + KELVIN);
  return 5.670374e-8 * square * square;
}
static double saturation(double t) {
  if (t < -100) t = -100;
  return 0.6108 * exp((17.27 * t) / (t + 237.3));
}
static double slopeOf(double t, double saturated) {
  t = (t > -100 ? t : -100) + 237.3;
  return (4098 * saturated) / (t * t);
}
static double clamp(double share) { return share < 0 ? 0 : share > 1 ? 1 : share; }

static double *take(double **from, int count) {
  double *here = *from;
  *from += count;
  return here;
}
static void takeFloor(double **from, Floor *floor) {
  memcpy(floor, take(from, sizeof(Floor) / sizeof(double)), sizeof(Floor));
}

/* One hour of a floor, or of open turf. */
static void hour(const Floor *f, const Settings *s, double air, double sun, double wind, double vapour, double whole) {
  int cells = (int)f->cells, covered = f->nodes == 2;
  double convection = s->still + s->windy * wind * f->wind;
  double gamma = 0.665e-3 * s->pressure;
  double emissivity = f->sky > 0 ? 1 - f->sky * (1 - whole) : 1;
  double openLink = f->openArea * convection, gap = f->gapLink * f->vapourShare;
  double longwave = s->emissivity * emissivity * blackBody(air);
  double dry = openLink / (1 + s->leafResistance / 1210 * convection) + gap / (1 + f->shadedLeaf / 1210 * gap);
  double condensation = (openLink + gap) / gamma;
  double evaporation = (dry * (1 - f->mistCanopy)) / gamma + f->mistCanopy * condensation;
  for (int i = 0; i < cells; i++)
    if (temperature[i] < s->upper) {
      fprintf(stderr, "frost: not part of this chain\n");
      exit(2);
    }
  double below = s->deep;
  for (int i = cells - 1; i >= 0; i--) p[i] = below = f->own[i] * temperature[i] + f->fromBelow[i] * below;
  double soilLink = f->sweepLink, soilP = p[0], soilQ = f->q[0];
  double perSecond = 1 / s->step, gain = convection * air + longwave;
  double leafDiagonal = s->canopyStore + soilLink * (1 - soilQ) + f->gapLink;
  double leafKnown = s->canopyStore * canopy + soilLink * soilP + f->canopySun * sun + f->gapLink * air;
  double upper = covered ? f->link[0] : 0, lower = covered ? f->link[1] : 0;
  double topDiagonal = covered ? f->store[0] * perSecond + f->airLink[0] + upper + f->topArea * convection : 1;
  double topKnown = covered ? f->store[0] * perSecond * top + f->airLink[0] * air + f->sun[0] * sun + f->topArea * gain : 0;
  double baseDiagonal = covered ? f->store[1] * perSecond + upper + lower + f->airLink[1] : 1;
  double baseKnown = covered ? f->store[1] * perSecond * base + f->airLink[1] * air + f->sun[1] * sun : 0;
  double leaf = canopy, high = top, low = 0;
  for (int round = 0; round < 30; round++) {
    double diagonal = leafDiagonal, known = leafKnown, topP = 0, topQ = 0, baseP = 0, baseQ = 0;
    if (covered) {
      double radiated = s->emissivity * blackBody(high), rise = 4 * radiated / (high + KELVIN);
      double share = 1 / (topDiagonal + f->topArea * rise);
      topP = (topKnown + f->topArea * (rise * high - radiated)) * share;
      topQ = upper * share;
      double down = 1 / (baseDiagonal - upper * topQ);
      baseP = (baseKnown + upper * topP) * down;
      baseQ = lower * down;
      diagonal += lower * (1 - baseQ);
      known += lower * baseP;
    }
    if (f->openArea > 0) {
      double radiated = s->emissivity * blackBody(leaf), rise = 4 * radiated / (leaf + KELVIN);
      diagonal += f->openArea * (convection + rise);
      known += f->openArea * (gain - radiated + rise * leaf);
    }
    if (condensation > 0) {
      double saturated = saturation(leaf);
      double ease = saturated > vapour ? evaporation : condensation;
      double slope = ease * slopeOf(leaf, saturated);
      diagonal += slope;
      known += slope * leaf - ease * (saturated - vapour);
    }
    double next = known / diagonal, apart = fabs(next - leaf);
    leaf = next;
    if (covered) {
      low = baseP + baseQ * next;
      double above = topP + topQ * low;
      if (fabs(above - high) > apart) apart = fabs(above - high);
      high = above;
    }
    if (apart < 0.02) break;
  }
  double above = leaf;
  for (int i = 0; i < cells; i++) temperature[i] = above = p[i] + f->q[i] * above;
  canopy = leaf;
  if (covered) {
    top = high;
    base = low;
  }
}

static double lossAt(const Rates *r, double t, double seal) {
  double loss = exp(r->warmth * (t - 20)) * (1 + seal * (t > r->sealTemperature ? r->sealWarm : r->sealCold)) * r->daily;
  if (t < r->growthBase) {
    double awake = fmax(0, 1 + (t - r->growthBase) / r->dormantSpan);
    loss *= r->dormantShare + (1 - r->dormantShare) * awake;
  }
  return loss;
}
static double warmthAt(const Rates *r, double t) {
  double offset = (t - r->optimum) / r->width;
  return exp(-0.5 * offset * offset);
}

/* Days of growth, no sod, no seed. */
static void grow(const double *drivers, int from, int count, const Traits *t, float *track) {
  double fullLeaf = 1 + exp((t->halfLeaf - 1) / t->leafSpread), fullCrowns = 1 + exp((t->halfCrowns - 1) / t->crownsSpread);
  double cover = stand[COVER], crowns = stand[CROWNS], reserve = stand[RESERVE], nitrogen = stand[NITROGEN];
  double clock = stand[CLOCK], fedLeaf = stand[FED_LEAF], fedCrowns = stand[FED_CROWNS];
  if (fedLeaf == 0) fedLeaf = fullLeaf / (1 + exp((t->halfLeaf - reserve) / t->leafSpread));
  if (fedCrowns == 0) fedCrowns = fullCrowns / (1 + exp((t->halfCrowns - reserve) / t->crownsSpread));
  for (int day = from; day < from + count; day++) {
    const double *now = drivers + day * DRIVER;
    double light = fmax(0, now[2]);
    reserve = clamp(reserve + now[6]);
    double leafBound = 1, crownsBound = 1;
    if (reserve < 1) {
      leafBound = fullLeaf / (1 + exp((t->halfLeaf - reserve) / t->leafSpread));
      crownsBound = fullCrowns / (1 + exp((t->halfCrowns - reserve) / t->crownsSpread));
      if (fedCrowns > crownsBound) {
        crowns *= crownsBound / fedCrowns;
        fedCrowns = crownsBound;
      }
      if (fedLeaf > leafBound) {
        double kept = leafBound / fedLeaf;
        if (cover * kept > crowns) kept = crowns / cover;
        cover *= kept;
        fedLeaf = leafBound;
      }
    }
    if (now[4] > 0) clock += clamp(1 - light / t->clockLight) * exp(t->clockWarmth * (now[0] - t->clockReference));
    else if (clock > 0) clock = fmax(0, clock - t->clockUnwind);
    double offset = (now[0] - t->growthOptimum) / t->growthSpread;
    double potential = t->plateau && now[0] >= t->growthOptimum ? 1 : exp(-0.5 * offset * offset);
    if (potential > t->growthStop) {
      double best = potential * fmin(1, light / t->lightNeed);
      double leaf = fmin(t->rateLimit, t->leafRate * best);
      double fed = t->nitrogenUnfed + (1 - t->nitrogenUnfed) * fmin(1, nitrogen / t->nitrogenFull);
      double spread = fmin(t->rateLimit, t->spreadRate * best * fed * t->ground);
      if (fedLeaf == 1 && fedCrowns == 1) {
        if (cover < crowns) cover += leaf * (crowns - cover);
        if (crowns < 1) crowns += spread * crowns * (1 - crowns);
      } else {
        double beside = cover / fedLeaf, besideCrowns = crowns / fedCrowns, ceiling = fedCrowns * leafBound;
        if (beside < besideCrowns) beside += leaf * (besideCrowns - beside);
        if (fedLeaf < ceiling) fedLeaf += leaf * (ceiling - fedLeaf);
        besideCrowns *= fmax(1, (1 + spread * (1 - crowns)) / (1 + spread * (1 - fedCrowns)));
        if (fedCrowns < crownsBound) fedCrowns = fmin(crownsBound, fedCrowns + spread * fedCrowns * (1 - fedCrowns));
        crowns = fmin(1, besideCrowns * fedCrowns);
        cover = fmin(crowns, beside * fedLeaf);
      }
      nitrogen = fmax(0, nitrogen - t->nitrogenUse * potential);
    }
    track[day * 3] = (float)cover;
    track[day * 3 + 1] = (float)crowns;
    track[day * 3 + 2] = (float)reserve;
  }
  stand[COVER] = cover;
  stand[CROWNS] = crowns;
  stand[RESERVE] = reserve;
  stand[NITROGEN] = nitrogen;
  stand[CLOCK] = clock;
  stand[FED_LEAF] = fedLeaf;
  stand[FED_CROWNS] = fedCrowns;
}

int main(int argc, char **argv) {
  if (argc < 3) return 1;
  FILE *file = fopen(argv[1], "rb");
  if (!file) return 1;
  fseek(file, 0, SEEK_END);
  size_t size = ftell(file);
  rewind(file);
  double *data = malloc(size);
  if (!data || fread(data, 1, size, file) != size) return 1;
  fclose(file);

  double *next = data, *head = take(&next, 10);
  int members = (int)head[0], hours = (int)head[1], days = (int)head[2], cells = (int)head[3], firstDay = (int)head[4];
  int begin = (int)head[5], from = (int)head[6], until = (int)head[7];
  double seal = head[8], passes = head[9];
  Settings settings;
  memcpy(&settings, take(&next, sizeof(Settings) / 8), sizeof(Settings));
  Floor bare, floor;
  takeFloor(&next, &bare);
  takeFloor(&next, &floor);
  double *start = take(&next, STAND), *depth = take(&next, cells), bottom = *take(&next, 1);
  double *body = next, *crown = malloc(sizeof(double) * hours), *drivers = malloc(sizeof(double) * days * DRIVER);
  float *track = malloc(sizeof(float) * days * 3);
  double best = 1e9, sums[3] = {0, 0, 0};

  for (int round = 0; round < atoi(argv[2]); round++) {
    struct timespec began, ended;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &began);
    sums[0] = sums[1] = sums[2] = 0;
    next = body;
    for (int member = 0; member < members; member++) {
      Rates *rates = (Rates *)take(&next, sizeof(Rates) / 8);
      Traits *traits = (Traits *)take(&next, sizeof(Traits) / 8);
      Heat *heat = (Heat *)take(&next, sizeof(Heat) / 8);
      double *air = take(&next, hours), *sun = take(&next, hours), *wind = take(&next, hours), *vapour = take(&next, hours);
      double *emissivity = take(&next, hours);
      memcpy(drivers, take(&next, days * DRIVER), sizeof(double) * days * DRIVER);
      memcpy(stand, start, sizeof stand);
      canopy = air[begin];
      for (int i = 0; i < cells; i++) temperature[i] = canopy + ((settings.deep - canopy) * depth[i]) / bottom;
      for (int h = begin; h < until; h++) {
        if (h == from) top = base = air[h];
        hour(h < from ? &bare : &floor, &settings, air[h], sun[h], wind[h], vapour[h], emissivity[h]);
        crown[h] = canopy;
      }
      int day = firstDay + from / 24, last = firstDay + (until - 1) / 24;
      double dose = 0, rate = M_LN10 / heat->decade;
      grow(drivers, 0, day, traits, track);
      for (; day <= last; day++) {
        double warmth = 0, loss = 0, lit = 0, before = dose <= 0 ? 1 : 1 / (1 + pow(dose, heat->steepness));
        for (int h = (day - firstDay) * 24; h < (day - firstDay + 1) * 24; h++) {
          int lies = h >= from && h < until;
          double t = lies ? crown[h] : air[h];
          warmth += warmthAt(rates, t);
          loss += lossAt(rates, t, lies ? seal : 0);
          lit += lies ? passes : 1;
          if (lies) dose += exp((t - heat->halfKill) * rate) / 96;
        }
        double useful = drivers[day * DRIVER + 2] * lit / 24;
        double kept = (dose <= 0 ? 1 : 1 / (1 + pow(dose, heat->steepness))) / before;
        stand[COVER] *= kept;
        stand[CROWNS] *= kept;
        drivers[day * DRIVER + 2] = useful;
        drivers[day * DRIVER + 4] = 1;
        drivers[day * DRIVER + 6] = (rates->gainScale * useful / (useful + rates->halfLight) * warmth - loss) / 24;
        grow(drivers, day, 1, traits, track);
      }
      grow(drivers, day, days - day, traits, track);
      sums[0] += crown[until - 1];
      sums[1] += stand[COVER];
      sums[2] += stand[RESERVE];
    }
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &ended);
    double took = (ended.tv_sec - began.tv_sec) + 1e-9 * (ended.tv_nsec - began.tv_nsec);
    if (took < best) best = took;
  }
  printf("%.6f %.12g %.12g %.12g\n", best, sums[0], sums[1], sums[2]);
  return 0;
}
