import { Button, Checkbox, FileButton, Modal, NativeSelect, Radio, TextInput } from "@mantine/core";
import { boxOf } from "@pinwright/kernel";
import { useEffect, useMemo, useState } from "react";
import type { AskAnswer } from "../../worker/protocol.ts";
import { useOne } from "../book/desk.tsx";
import { useFaultText } from "../tables/use-fault-text.ts";
import { usePick, useWords } from "../words.tsx";
import { addCircles, type Stage } from "./actions.ts";
import { cornersAt } from "./scene.ts";
import { pathOf } from "./shapes.tsx";

type Drawn = AskAnswer<"readDrawing">;
type OutlineOf = {
  readonly table: "panels" | "cutouts" | "device_types" | "board_types" | "mechanism_types";
  readonly id: string;
  readonly label: string;
};

const TYPE_TABLES = {
  devices: "device_types",
  boards: "board_types",
  mechanisms: "mechanism_types",
} as const;

/** A name as the book's drawings have them: lower case, no spaces, the ending kept. */
const plainName = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9.-]+/gu, "-")
    .replace(/^[-.]+/u, "");

/** Brings an outline or circles from a drawing into the book. */
export function BringIn({
  stage,
  selected,
  close,
  failed,
}: {
  readonly stage: Stage;
  readonly selected: readonly string[];
  readonly close: () => void;
  readonly failed: (error: unknown) => void;
}) {
  const words = useWords();
  const own = words.layout.bringIn;
  const faultText = useFaultText();
  const [file, setFile] = useState<{ readonly name: string; readonly text: string } | null>(null);
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const { desk } = stage;
  useEffect(() => {
    if (file === null) return;
    let wanted = true;
    void desk.ask("readDrawing", file).then((answer) => wanted && setDrawn(answer), failed);
    return () => {
      wanted = false;
    };
  }, [file, desk, failed]);
  const chosen = async (one: File | null): Promise<void> => {
    if (one === null) return;
    setDrawn(null);
    setFile({ name: plainName(one.name), text: await one.text() });
  };
  const done = (work: Promise<unknown>): void => {
    close();
    void work.catch(failed);
  };
  return (
    <Modal opened onClose={close} title={own.title} size="lg">
      <p className="dim">{own.hint}</p>
      <FileButton accept=".dxf,.svg" onChange={(one) => void chosen(one)}>
        {(props) => (
          <Button variant="default" {...props}>
            {own.file}
          </Button>
        )}
      </FileButton>
      {file !== null && drawn !== null && (
        <>
          <Preview drawn={drawn} />
          {drawn.problems.slice(0, 10).map((problem) => (
            <p key={problem.expected} className="amber-text">
              {faultText(problem)}
            </p>
          ))}
          {drawn.rings.length === 0 ? (
            <p>{own.nothing}</p>
          ) : (
            <OutlineForm
              stage={stage}
              selected={selected}
              file={file}
              drawn={drawn}
              rename={(name) => setFile({ ...file, name })}
              done={done}
            />
          )}
          {drawn.circles.length > 0 && <CirclesForm stage={stage} drawn={drawn} done={done} />}
        </>
      )}
    </Modal>
  );
}

function Preview({ drawn }: { readonly drawn: Drawn }) {
  const corners = drawn.rings.flatMap((ring) => cornersAt(ring, 0, 0));
  const rims = drawn.circles.flatMap(({ xMm, yMm, diameterMm }) => [
    { xMm: xMm - diameterMm / 2, yMm: yMm - diameterMm / 2 },
    { xMm: xMm + diameterMm / 2, yMm: yMm + diameterMm / 2 },
  ]);
  const box = boxOf([...corners, ...rims]);
  if (box === null) return null;
  const width = box.maxXMm - box.minXMm;
  const height = box.maxYMm - box.minYMm;
  return (
    <svg
      className="bring-in-preview"
      aria-hidden
      viewBox={`${box.minXMm - width * 0.02} ${-box.maxYMm - height * 0.02} ${width * 1.04} ${height * 1.04}`}
    >
      <g transform="scale(1 -1)">
        <path d={pathOf(drawn.rings)} />
        {drawn.circles.map((circle, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: circles of one reading have no other name
          <circle key={i} cx={circle.xMm} cy={circle.yMm} r={circle.diameterMm / 2} />
        ))}
      </g>
    </svg>
  );
}

function OutlineForm({
  stage,
  selected,
  file,
  drawn,
  rename,
  done,
}: {
  readonly stage: Stage;
  readonly selected: readonly string[];
  readonly file: { readonly name: string; readonly text: string };
  readonly drawn: Drawn;
  readonly rename: (name: string) => void;
  readonly done: (work: Promise<unknown>) => void;
}) {
  const words = useWords();
  const own = words.layout.bringIn;
  const { desk, scene, panelId } = stage;
  const [first = ""] = selected;
  const about = useOne("layoutAbout", { id: first });
  const target = scene.targets.get(first);
  const uses = useMemo((): readonly OutlineOf[] => {
    const found: OutlineOf[] = [{ table: "panels", id: panelId, label: own.thisPanel(panelId) }];
    if (target?.row?.table === "cutouts")
      found.unshift({ table: "cutouts", id: target.id, label: own.thisCutout(target.id) });
    const layer = target?.layer;
    const typeId = about?.typeId ?? null;
    if (typeId !== null && (layer === "devices" || layer === "boards" || layer === "mechanisms"))
      found.unshift({ table: TYPE_TABLES[layer], id: typeId, label: own.thisType(typeId) });
    return found;
  }, [panelId, target, about, own]);
  const [at, setAt] = useState("0");
  const use = uses[Number(at)] ?? uses[0];
  if (use === undefined) return null;
  return (
    <form
      className="bring-in-form"
      onSubmit={(event) => {
        event.preventDefault();
        const { table, id } = use;
        done(desk.edit(words.layout.notes.outline(id), { kind: "outline", ...file, table, id }));
      }}
    >
      <p>{own.size(drawn.widthMm, drawn.heightMm, drawn.rings.length)}</p>
      <Radio.Group label={own.asOutline} value={at} onChange={setAt}>
        {uses.map((one, i) => (
          <Radio key={one.label} value={String(i)} label={one.label} mt={8} />
        ))}
      </Radio.Group>
      <TextInput
        label={own.name}
        size="sm"
        value={file.name}
        description={drawn.isTaken ? own.replaces : undefined}
        onChange={(event) => rename(event.currentTarget.value)}
      />
      <Button type="submit" disabled={!/^[a-z0-9][a-z0-9.-]*\.(dxf|svg)$/u.test(file.name)}>
        {own.use}
      </Button>
    </form>
  );
}

function CirclesForm({
  stage,
  drawn,
  done,
}: {
  readonly stage: Stage;
  readonly drawn: Drawn;
  readonly done: (work: Promise<unknown>) => void;
}) {
  const words = useWords();
  const pick = usePick();
  const own = words.layout.bringIn;
  const sizes = useMemo(
    () => [...new Set(drawn.circles.map((circle) => circle.diameterMm))].sort((a, b) => a - b),
    [drawn],
  );
  const [wanted, setWanted] = useState<ReadonlySet<number>>(new Set(sizes));
  const [as, setAs] = useState<"waypoints" | "fasteners">("fasteners");
  const [types, setTypes] = useState<AskAnswer<"fastenerTypes">>([]);
  const [type, setType] = useState("");
  const [stem, setStem] = useState("fx.drawn-");
  const { desk } = stage;
  useEffect(() => {
    void desk.ask("fastenerTypes", null).then((answer) => {
      setTypes(answer);
      setType(answer[0]?.id ?? "");
    });
  }, [desk]);
  const circles = drawn.circles.filter((circle) => wanted.has(circle.diameterMm));
  const isGood =
    circles.length > 0 && /^[a-z][a-z0-9.-]*$/u.test(stem) && (as === "waypoints" || type !== "");
  return (
    <form
      className="bring-in-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (isGood) done(addCircles(stage, circles, as, type, stem));
      }}
    >
      <h3>{own.circles(drawn.circles.length)}</h3>
      <div className="sizes">
        {sizes.map((size) => (
          <Checkbox
            key={size}
            label={`Ø ${words.layout.mm(size, 2)} (${drawn.circles.filter((c) => c.diameterMm === size).length})`}
            checked={wanted.has(size)}
            onChange={(event) => {
              const next = new Set(wanted);
              if (event.currentTarget.checked) next.add(size);
              else next.delete(size);
              setWanted(next);
            }}
          />
        ))}
      </div>
      <Radio.Group
        aria-label={own.circles(drawn.circles.length)}
        value={as}
        onChange={(value) => {
          const next = value === "waypoints" ? "waypoints" : "fasteners";
          setAs(next);
          setStem(next === "waypoints" ? "wp.drawn-" : "fx.drawn-");
        }}
      >
        <Radio value="fasteners" label={own.asFasteners} mt={8} />
        <Radio value="waypoints" label={own.asWaypoints} mt={8} />
      </Radio.Group>
      {as === "fasteners" && (
        <NativeSelect
          label={own.fastenerType}
          size="sm"
          value={type}
          onChange={(event) => setType(event.currentTarget.value)}
          data={types.map((one) => ({ value: one.id, label: pick(one.label, one.labelZh) || one.id }))}
        />
      )}
      <TextInput
        label={own.stem}
        size="sm"
        value={stem}
        onChange={(event) => setStem(event.currentTarget.value)}
      />
      <Button type="submit" disabled={!isGood}>
        {own.addCircles(circles.length)}
      </Button>
    </form>
  );
}
