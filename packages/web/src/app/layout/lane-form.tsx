import { Button, MultiSelect, TextInput } from "@mantine/core";
import { useEffect, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { numberOf } from "./place-form.tsx";

type Lane = ViewEntry<"layoutLanes">;

/** How full a lane is, how much fits and what may lie in it. */
export function LaneForm({
  lane,
  mayEdit,
  netClasses,
  failed,
}: {
  readonly lane: Lane;
  readonly mayEdit: boolean;
  readonly netClasses: readonly string[];
  readonly failed: (error: unknown) => void;
}) {
  const words = useWords();
  const desk = useDesk();
  const own = words.layout.lane;
  const [most, setMost] = useState("");
  const [classes, setClasses] = useState<string[]>([]);
  const kept = lane.classes.join(" ");
  useEffect(() => {
    setMost(String(lane.maxMm));
    setClasses(kept === "" ? [] : kept.split(" "));
  }, [lane.maxMm, kept]);
  const maxMm = numberOf(most);
  const fits = maxMm !== null && maxMm >= 1 && maxMm <= 200;
  const chosen = netClasses.filter((one) => classes.includes(one)).join(" ");
  const same = maxMm === lane.maxMm && chosen === kept;
  const send = async () => {
    if (!fits) return;
    await desk.edit(words.layout.notes.set(lane.id), {
      kind: "row",
      table: "lanes",
      id: lane.id,
      cells: { max_diameter_mm: String(maxMm), classes: chosen },
    });
  };
  const full = Math.min(1, lane.usedMm / lane.maxMm);
  return (
    <>
      <p className={lane.usedMm > lane.maxMm ? "error-text" : undefined}>
        {lane.usedMm > 0 ? own.used(lane.usedMm, lane.maxMm) : own.empty(lane.maxMm)}
      </p>
      <div className="fullness" aria-hidden>
        <div style={{ width: `${full * 100}%` }} />
      </div>
      {lane.shares.map((share) => (
        <p key={share.harnessId} className="effect">
          {own.share(share.number, share.wires, share.laidMm)}
        </p>
      ))}
      {mayEdit && (
        <form
          className="lane-form"
          onSubmit={(event) => {
            event.preventDefault();
            void send().catch(failed);
          }}
        >
          <TextInput
            label={own.most}
            size="sm"
            inputMode="decimal"
            value={most}
            error={!fits && words.layout.place.wrong}
            onChange={(event) => setMost(event.currentTarget.value)}
          />
          <MultiSelect
            label={own.classes}
            description={own.classesHint}
            size="sm"
            data={[...netClasses]}
            value={classes}
            onChange={setClasses}
          />
          <Button type="submit" size="sm" variant="default" disabled={same || !fits}>
            {words.common.save}
          </Button>
        </form>
      )}
    </>
  );
}
