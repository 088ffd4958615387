import { Button, NativeSelect, TextInput } from "@mantine/core";
import { useEffect, useState } from "react";
import { useDesk, useView } from "../book/desk.tsx";
import { usePick, useWords } from "../words.tsx";
import type { Side, Target } from "./scene.ts";

/** A number as people write it: a decimal point or comma, spaces round it. Null when it is none. */
export function numberOf(text: string): number | null {
  const plain = text.trim().replace(",", ".");
  return /^[-+−]?\d+(\.\d+)?$/u.test(plain) ? Number(plain.replace("−", "-")) : null;
}

const textOf = (value: number): string => String(Math.round(value * 100) / 100);

/** Exact place of one thing, typed. */
export function PlaceForm({
  target,
  panelId,
  moved,
  failed,
}: {
  readonly target: Target;
  readonly panelId: string;
  /** Called when it is on another panel or side now. */
  readonly moved: (panelId: string, side: Side) => void;
  readonly failed: (error: unknown) => void;
}) {
  const words = useWords();
  const pick = usePick();
  const desk = useDesk();
  const panels = useView("layoutPanels", null);
  const own = words.layout.place;
  const [x, setX] = useState("");
  const [y, setY] = useState("");
  const [turn, setTurn] = useState("");
  const [panel, setPanel] = useState(panelId);
  const [side, setSide] = useState<Side>(target.side);
  useEffect(() => {
    setX(textOf(target.xMm));
    setY(textOf(target.yMm));
    setTurn(textOf(target.rotationDeg));
    setPanel(panelId);
    setSide(target.side);
  }, [target.xMm, target.yMm, target.rotationDeg, target.side, panelId]);
  const { row } = target;
  if (row === null || row.table === "lanes") return null;
  const { table, id } = row;
  const turns = table !== "waypoints" && table !== "fasteners";
  const xMm = numberOf(x);
  const yMm = numberOf(y);
  const rotationDeg = numberOf(turn);
  const turnFits = !turns || (rotationDeg !== null && Math.abs(rotationDeg) <= 360);
  const sent = async () => {
    if (xMm === null || yMm === null || !turnFits) return;
    const goesOff = panel !== panelId || side !== target.side;
    await desk.edit(words.layout.notes.move(id, 1), {
      kind: "place",
      places: [
        {
          table,
          id,
          xMm,
          yMm,
          ...(turns && rotationDeg !== null ? { rotationDeg } : {}),
          ...(goesOff ? { panelId: panel, side } : {}),
        },
      ],
    });
    if (goesOff) moved(panel, side);
  };
  const same =
    xMm === target.xMm &&
    yMm === target.yMm &&
    (!turns || rotationDeg === target.rotationDeg) &&
    panel === panelId &&
    side === target.side;
  return (
    <form
      className="place-form"
      onSubmit={(event) => {
        event.preventDefault();
        void sent().catch(failed);
      }}
    >
      <TextInput
        label={own.x}
        size="sm"
        inputMode="decimal"
        rightSection="mm"
        value={x}
        error={xMm === null && own.wrong}
        onChange={(event) => setX(event.currentTarget.value)}
      />
      <TextInput
        label={own.y}
        size="sm"
        inputMode="decimal"
        rightSection="mm"
        value={y}
        error={yMm === null && own.wrong}
        onChange={(event) => setY(event.currentTarget.value)}
      />
      {turns && (
        <TextInput
          label={own.rotation}
          size="sm"
          inputMode="decimal"
          rightSection="°"
          value={turn}
          error={!turnFits && own.wrongTurn}
          onChange={(event) => setTurn(event.currentTarget.value)}
        />
      )}
      <NativeSelect
        label={words.layout.panel}
        size="sm"
        value={panel}
        onChange={(event) => setPanel(event.currentTarget.value)}
        data={[...(panels?.values() ?? [])].map((one) => ({
          value: one.id,
          label: pick(one.label, one.labelZh) || one.id,
        }))}
      />
      <NativeSelect
        label={words.layout.side}
        size="sm"
        value={side}
        onChange={(event) => setSide(event.currentTarget.value === "under" ? "under" : "top")}
        data={[
          { value: "top", label: words.common.side.top },
          { value: "under", label: words.common.side.under },
        ]}
      />
      <Button
        type="submit"
        size="sm"
        variant="default"
        disabled={same || xMm === null || yMm === null || !turnFits}
      >
        {own.move}
      </Button>
    </form>
  );
}
