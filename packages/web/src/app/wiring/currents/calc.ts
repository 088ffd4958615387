import type {
  Carried,
  CoilRating,
  ContactRating,
  FuseRating,
  LampRating,
  NetDrop,
  SupplyRating,
  WireRating,
} from "@pinwright/engine";
import type { AppWords } from "@pinwright/words/app";
import { a2sText, ampsText, figure, ohmText, percentText, secondsText, voltsText } from "./figures.ts";

type Words = AppWords["electric"];

/** One step of a computation, so that it can be done again by hand. */
export interface CalcStep {
  readonly what: string;
  /** `3.5 A × 0.87 × 0.6`; blank where the value is looked up. */
  readonly formula: string;
  readonly result: string;
}

const step = (what: string, formula: string, result: string): CalcStep => ({ what, formula, result });
const times = (...parts: readonly string[]): string => parts.join(" × ");
const over = (above: string, below: string): string => `${above} ÷ ${below}`;

/** Current limit of a wire, and how near its current is to it. */
export function wireSteps({ calc }: Words, rating: WireRating): readonly CalcStep[] {
  const { singleA, ambientShare, bundleShare, wires, loading, branchId, limitA, rmsA, share } = rating;
  return [
    step(calc.single, "", ampsText(singleA)),
    step(calc.ambient, "", figure(ambientShare)),
    step(calc.bundle(wires, percentText(loading), branchId || "–"), "", figure(bundleShare)),
    step(calc.limit, times(ampsText(singleA), figure(ambientShare), figure(bundleShare)), ampsText(limitA)),
    step(calc.rms, "", ampsText(rmsA)),
    step(calc.share, over(ampsText(rmsA), ampsText(limitA)), percentText(share)),
  ];
}

/** Current limit of a contact, and how near its current is to it. */
export function contactSteps({ calc }: Words, rating: ContactRating): readonly CalcStep[] {
  const { ratedA, loaded, ways, contactShare, limitA, rmsA, share } = rating;
  return [
    step(calc.contactAlone, "", ampsText(ratedA)),
    step(calc.neighbours(figure(loaded), ways), "", figure(contactShare)),
    step(calc.limit, times(ampsText(ratedA), figure(contactShare)), ampsText(limitA)),
    step(calc.rms, "", ampsText(rmsA)),
    step(calc.share, over(ampsText(rmsA), ampsText(limitA)), percentText(share)),
  ];
}

/** Drop over a conductor at its largest current, at the nominal corner. */
export const dropStep = ({ calc }: Words, { ohm, peakA, dropV }: Carried): CalcStep =>
  step(calc.drop, times(ohmText(ohm.nominal), ampsText(peakA.nominal)), voltsText(Math.abs(dropV.nominal)));

/** What a fuse is asked for by its steady current, its pulses and a short circuit, against what it is. */
export function fuseSteps({ calc, fuse }: Words, rating: FuseRating): readonly CalcStep[] {
  const { rmsA, ambientShare, steadyA, pulses, pulseShare, neededA2s, meltingA2s, requiredA } = rating;
  const steps = [
    step(calc.rms, "", ampsText(rmsA)),
    step(calc.steadyFuse, over(ampsText(rmsA), figure(ambientShare)), ampsText(steadyA)),
  ];
  if (neededA2s !== null)
    steps.push(
      step(
        calc.pulseNeed(String(pulses)),
        over(a2sText(rating.pulseA2s), figure(pulseShare)),
        a2sText(neededA2s),
      ),
    );
  if (meltingA2s !== null) steps.push(step(calc.melting, "", a2sText(meltingA2s)));
  if (requiredA !== null) steps.push(step(fuse.requires, "", ampsText(requiredA)));
  steps.push(...shortSteps({ calc }, rating));
  return steps;
}

function shortSteps({ calc }: Pick<Words, "calc">, { far, weakest, volts }: FuseRating): readonly CalcStep[] {
  const steps: CalcStep[] = [];
  if (far !== null)
    steps.push(
      step(calc.loop, over(voltsText(volts), ohmText(far.loopOhm)), ampsText(far.firstA)),
      step(calc.held, "", ampsText(far.heldA)),
      step(calc.opens, "", secondsText(far.opensS)),
    );
  if (weakest !== null)
    steps.push(
      step(
        calc.stands,
        `(${figure(weakest.k)} A√s/mm² × ${figure(weakest.areaMm2)} mm²)²`,
        a2sText(weakest.adiabaticA2s),
      ),
      step(calc.used, "", percentText(weakest.used)),
    );
  return steps;
}

/** Heat of a coil over a minute of hard play, and the time for which it stands being stuck on. */
export function coilSteps({ calc, col, coil }: Words, rating: CoilRating): readonly CalcStep[] {
  const { volts, ohm20C, mostA, leastA, duty, allowedDuty, meanW, kelvinPerWatt, stuckS, windingOhm } =
    rating;
  return [
    step(calc.cold, "", ampsText(mostA)),
    step(calc.hot, "", ampsText(leastA)),
    step(col.ohms, over(voltsText(volts), ohmText(ohm20C)), ampsText(volts / ohm20C)),
    step(calc.duty, "", percentText(duty)),
    ...(allowedDuty === null ? [] : [step(calc.allowedDuty, "", percentText(allowedDuty))]),
    step(calc.heat, "", `${figure(meanW)} W`),
    ...(kelvinPerWatt === null
      ? []
      : [
          step(
            calc.rise,
            times(`${figure(meanW)} W`, `${figure(kelvinPerWatt)} K/W`),
            `${figure(meanW * kelvinPerWatt)} K`,
          ),
        ]),
    ...(windingOhm === null ? [] : [step(calc.winding, "", ohmText(windingOhm))]),
    ...(rating.storedJ === null ? [] : [step(calc.stored, "", `${figure(rating.storedJ * 1000)} mJ`)]),
    ...(rating.holdS === null ? [] : [step(col.holdS, "", secondsText(rating.holdS))]),
    ...(rating.fuseS === null ? [] : [step(calc.coilFuse, "", secondsText(rating.fuseS))]),
    ...(rating.timeoutS === null ? [] : [step(calc.timeout, "", secondsText(rating.timeoutS))]),
    ...(stuckS === null
      ? []
      : [step(col.stuck, "", Number.isFinite(stuckS) ? secondsText(stuckS) : coil.endless)]),
  ];
}

/** Current and heat of an LED with its resistor. */
export function lampSteps({ calc, col }: Words, rating: LampRating): readonly CalcStep[] {
  const { volts, forwardV, ohm, amps, duty, ratedA, watts, ratedW, e24Ohm } = rating;
  return [
    step(calc.lampAmps, `(${voltsText(volts)} − ${voltsText(forwardV)}) ÷ ${ohmText(ohm)}`, ampsText(amps)),
    ...(ratedA === null ? [] : [step(col.rated, "", ampsText(ratedA))]),
    step(calc.duty, "", percentText(duty)),
    step(
      calc.resistorHeat,
      times(`(${ampsText(amps)})²`, ohmText(ohm), percentText(duty)),
      `${figure(watts)} W`,
    ),
    ...(ratedW === null ? [] : [step(calc.resistorStands, "", `${figure(ratedW)} W`)]),
    ...(e24Ohm === null ? [] : [step(calc.e24, "", ohmText(e24Ohm))]),
  ];
}

/** Head-room of a supply. */
export function supplySteps({ calc, col }: Words, rating: SupplyRating): readonly CalcStep[] {
  const { ratedA, rmsA, holdA, headroomA } = rating;
  return [
    step(col.rms, "", ampsText(rmsA)),
    step(col.hold, "", ampsText(holdA)),
    step(calc.headroom, `${ampsText(ratedA)} − ${ampsText(Math.max(rmsA, holdA))}`, ampsText(headroomA)),
    step(col.worst, "", ampsText(rating.worstA)),
  ];
}

/** Drop of a net, wire by wire. */
export function netDropSteps(
  { calc }: Words,
  { sections, dropV, limitV }: NetDrop,
  printed: (wireId: string) => string,
): readonly CalcStep[] {
  return [
    ...sections.map(({ wireId, amps, ohm, dropV: own }) =>
      step(calc.section(printed(wireId)), times(ampsText(amps), ohmText(ohm)), voltsText(own)),
    ),
    step(calc.sum, sections.map((one) => voltsText(one.dropV)).join(" + "), voltsText(dropV)),
    step(calc.dropLimit, "", voltsText(limitV)),
  ];
}
