import type { ControlStudy } from "@pinwright/engine";
import type { SpecificationLimits } from "@pinwright/kernel";
import { useWords } from "../../words.tsx";
import { CapabilityTable, Doubts, StudyFigures } from "./capability.tsx";
import { ControlChart } from "./control-chart.tsx";
import { Histogram } from "./histogram.tsx";
import { SignalTable } from "./signal-table.tsx";

/** Charts, rules, histogram and capability of one measurement. */
export function StudyView({
  study,
  name,
  unit,
  limits,
}: {
  readonly study: ControlStudy;
  readonly name: string;
  /** Unit of measure. */
  readonly unit: string;
  readonly limits: SpecificationLimits;
}) {
  const own = useWords().benchQuality.charts;
  const { leftOut, sampleSize, readings } = study;
  const kind = sampleSize === 1 ? "single" : "sample";
  const out = (["again", "withoutValue", "outOfCalibration"] as const)
    .filter((why) => leftOut[why] > 0)
    .map((why) => own.leftOut[why](leftOut[why]));
  /** Units of a point of the values, and of one of the ranges. */
  const valueUnits = (at: number): string => {
    const first = readings[at * sampleSize]?.unit ?? "";
    const last = readings[(at + 1) * sampleSize - 1]?.unit ?? "";
    return first === last ? first : `${first} – ${last}`;
  };
  const rangeUnits = (at: number): string =>
    sampleSize === 1 ? `${readings[at]?.unit ?? ""} – ${readings[at + 1]?.unit ?? ""}` : valueUnits(at);
  return (
    <>
      <p className="dim">
        {own.first} {out.length === 0 ? own.noneLeftOut : own.leftOutAll(out.join(", "))}
      </p>
      <Doubts study={study} />
      <ControlChart
        name={own.values[kind]}
        unit={unit}
        chart={study.values}
        limits={sampleSize === 1 ? limits : { lower: null, upper: null }}
        unitsOf={valueUnits}
      />
      <ControlChart
        name={own.ranges[kind]}
        unit={unit}
        chart={study.spreads}
        limits={{ lower: null, upper: null }}
        unitsOf={rangeUnits}
      />
      <SignalTable study={study} valueUnits={valueUnits} rangeUnits={rangeUnits} />
      <div className="quality-beside">
        <StudyFigures study={study} unit={unit} limits={limits} />
        <CapabilityTable study={study} limits={limits} />
      </div>
      <Histogram study={study} unit={unit} limits={limits} name={name} />
    </>
  );
}
