/**
 * AssemblyScript. One corner crack or two at a hole, Newman and Raju, under a Walker law, cycle by cycle.
 *
 * The readable form is engine/growth: `run` of integrate, `holeCorner` of stress-intensity, `walker` of material, `wheeler`
 * and `willenborg` of interaction. This is the same arithmetic with the algebra done: K² in the place of K, one division
 * where several follow one another, one exponential a tip; what the geometry alone decides is handed in.
 *
 * The record is doubles in the order in which growth-cycles.ts writes them. mm, MPa, MPa√m.
 */

/** Where the record and the sequence may begin. */
export function free(): usize {
  return __heap_base;
}

/** K² of a tip over what both tips share: off from the hole, free surface, front of the ellipse. */
function tip(c: f64, surface: f64, front: f64, s: f64, bent: f64, slant: f64): f64 {
  const d = 1.0 + c * slant;
  const d2 = d * d;
  const falls = (2.156 + d * (-1.578 + d * (1.425 + d * (0.358 + d)))) / (d2 * (d2 + 0.13));
  const g = (1.0 + surface * s) * bent * falls;
  return g * g * sqrt<f64>(front);
}

/** 14 (1 − x)²⁴ */
function shallow24(left: f64): f64 {
  const p3 = left * left * left;
  const p6 = p3 * p3;
  const p12 = p6 * p6;
  return 14.0 * p12 * p12;
}

/**
 * @param io the record
 * @param peaks first of the peaks, MPa
 * @param troughs first of the troughs
 * @param length how many
 */
export function run(io: usize, peaks: usize, troughs: usize, length: f64): void {
  const r2 = load<f64>(io, 0); // 2 r
  const b4 = load<f64>(io, 8); // 4 b
  const perThickness = load<f64>(io, 16); // 1/t
  const cracks = load<f64>(io, 24);
  const scale = load<f64>(io, 32); // π/1000 · sec(π r/2b)
  const share = load<f64>(io, 40); // 1/(t r) for one crack, 0 for two
  const longest = load<f64>(io, 48);
  const lawC = load<f64>(io, 56);
  const lawN = load<f64>(io, 64);
  const lawM = load<f64>(io, 72);
  const acting = load<f64>(io, 80); // 0 none, 1 Wheeler, 2 Willenborg
  const first = load<f64>(io, 88); // exponent; threshold
  const second = load<f64>(io, 96); // shut-off ratio less one
  const zone = load<f64>(io, 104);
  const untilC = load<f64>(io, 112);
  const untilA = load<f64>(io, 120);
  const untilCycles = load<f64>(io, 128);
  const cS = load<f64>(io, 136);
  const cBent = load<f64>(io, 144);
  const cSlant = load<f64>(io, 152);
  const cCos2 = load<f64>(io, 160);
  const cSin2 = load<f64>(io, 168);
  const aS = load<f64>(io, 176);
  const aBent = load<f64>(io, 184);
  const aSlant = load<f64>(io, 192);
  const aCos2 = load<f64>(io, 200);
  const aSin2 = load<f64>(io, 208);
  let cycles = load<f64>(io, 216);
  let c = load<f64>(io, 224);
  let a = load<f64>(io, 232);
  let cAt = load<f64>(io, 240);
  let cZone = load<f64>(io, 248);
  let cK = load<f64>(io, 256);
  let aAt = load<f64>(io, 264);
  let aZone = load<f64>(io, 272);
  let aK = load<f64>(io, 280);
  let cEnd = cAt + cZone;
  let aEnd = aAt + aZone;

  const arc = 4.0 / Math.PI;
  const halfN = 0.5 * lawN;
  const reachC = 2.0 * cracks - 4.0;
  let at: usize = (<usize>(cycles - Math.floor(cycles / length) * length)) << 3;
  const end: usize = (<usize>length) << 3;

  while (cycles < untilCycles && c < untilC && a < untilA) {
    const high = load<f64>(peaks + at);
    const low = load<f64>(troughs + at);
    at += 8;
    if (at === end) at = 0;
    if (high > 0.0) {
      const deep = a > c;
      const x = deep ? c / a : a / c;
      const slimmest = deep ? 0.5 : 0.2;
      if (x < slimmest || c > longest) break;
      const x2 = x * x;
      const v = a * perThickness;
      const v2 = v * v;
      const rootV = sqrt<f64>(v);
      const q = 1.0 + 1.464 * Math.exp(1.65 * Math.log(x));
      const reach = (Math.PI * (r2 + cracks * c)) / (b4 + reachC * c);
      const part = a * c * share;
      const root = (scale * a * (arc + 0.5 * part)) / (q * Math.cos(reach * rootV) * (arc + part));
      let series: f64;
      let surface: f64;
      let frontC: f64;
      let frontA: f64;
      if (deep) {
        const x4v2 = x2 * x2 * v2;
        series = (sqrt<f64>(x) * (1.0 + 0.04 * x) + x4v2 * (0.2 - 0.11 * v2)) * (1.13 - 0.09 * x);
        surface = 0.1 + 0.35 * x * v2;
        frontC = cCos2 + x2 * cSin2;
        frontA = aCos2 + x2 * aSin2;
      } else {
        const m2 = -0.54 + 0.89 / (0.2 + x);
        const m3 = 0.5 - 1.0 / (0.65 + x) + shallow24(1.0 - x);
        series =
          (1.13 - 0.09 * x + v2 * (m2 + v2 * m3)) * (1.0 + 0.04 * x) * (1.0 - 0.7 * (1.0 - v) * (x - 0.2) * (1.0 - x));
        surface = 0.1 + 0.35 * v2;
        frontC = x2 * cCos2 + cSin2;
        frontA = x2 * aCos2 + aSin2;
      }
      series *= 0.85 + 0.15 * sqrt<f64>(rootV);
      const shared = root * series * series * (high * high);
      const c2 = shared * tip(c, surface, frontC, cS, cBent, cSlant);
      const a2 = shared * tip(c, surface, frontA, aS, aBent, aSlant);

      const ratio = low / high;
      const weight = low > 0.0 ? lawN * lawM * Math.log(1.0 - ratio) : 0.0;
      let dc: f64;
      let da: f64;
      if (acting === 0.0) {
        dc = lawC * Math.exp(weight + halfN * Math.log(c2));
        da = lawC * Math.exp(weight + halfN * Math.log(a2));
      } else {
        const cOwn = zone * c2;
        const aOwn = zone * a2;
        if (c + cOwn < cEnd) {
          if (acting === 1.0) dc = lawC * Math.exp(weight + halfN * Math.log(c2) + first * Math.log(cOwn / (cEnd - c)));
          else dc = lawC * lowered(c2, ratio, cK * sqrt<f64>(1.0 - (c - cAt) / cZone), first, second, lawN, lawM);
        } else {
          dc = lawC * Math.exp(weight + halfN * Math.log(c2));
          cAt = c;
          cZone = cOwn;
          cEnd = c + cOwn;
          cK = sqrt<f64>(c2);
        }
        if (a + aOwn < aEnd) {
          if (acting === 1.0) da = lawC * Math.exp(weight + halfN * Math.log(a2) + first * Math.log(aOwn / (aEnd - a)));
          else da = lawC * lowered(a2, ratio, aK * sqrt<f64>(1.0 - (a - aAt) / aZone), first, second, lawN, lawM);
        } else {
          da = lawC * Math.exp(weight + halfN * Math.log(a2));
          aAt = a;
          aZone = aOwn;
          aEnd = a + aOwn;
          aK = sqrt<f64>(a2);
        }
      }
      // What is no figure is left to the readable form.
      if (!(dc + da < Infinity)) break;
      c += dc;
      a += da;
    }
    cycles += 1.0;
  }

  store<f64>(io, cycles, 216);
  store<f64>(io, c, 224);
  store<f64>(io, a, 232);
  store<f64>(io, cAt, 240);
  store<f64>(io, cZone, 248);
  store<f64>(io, cK, 256);
  store<f64>(io, aAt, 264);
  store<f64>(io, aZone, 272);
  store<f64>(io, aK, 280);
}

/** Growth over C under a lowered peak: Willenborg inside the zone. `rest` is what the overload still asks for. */
function lowered(k2: f64, ratio: f64, rest: f64, threshold: f64, shut: f64, n: f64, m: f64): f64 {
  const kMax = sqrt<f64>(k2);
  const phi = max<f64>(0.0, (1.0 - threshold / kMax) / shut);
  const less = phi * (rest - kMax);
  const felt = kMax - less;
  if (felt <= 0.0) return 0.0;
  const least = ratio * kMax - less;
  const bent = least > 0.0 ? m * Math.log(1.0 - least / felt) : 0.0;
  return Math.exp(n * (bent + Math.log(felt)));
}
