import { Button, Modal, MultiSelect, NativeSelect, TextInput } from "@mantine/core";
import { isId, NET_CLASSES } from "@pinwright/book";
import { useEffect, useState } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { type Stage, USUAL_WAY_MM } from "./actions.ts";
import { freshId } from "./geometry/names.ts";
import { numberOf } from "./place-form.tsx";
import type { CrossingDraft } from "./use-crossing.ts";

type Kind = ViewEntry<"layoutCrossings">["kind"];

/** What a crossing says beside its two ends, as it is typed. */
interface Typed {
  readonly kind: Kind;
  readonly length: string;
  readonly room: string;
  readonly most: string;
  readonly classes: readonly string[];
}

const BLANK: Typed = { kind: "gap", length: "", room: "", most: "", classes: [] };
/** A hole joins the sides of one panel; the others join two panels. */
const kindsFor = (samePanel: boolean): readonly Kind[] => (samePanel ? ["hole"] : ["hinge", "gap"]);

const fits = (text: string, least: number, most: number): boolean => {
  const value = numberOf(text);
  return value !== null && value >= least && value <= most;
};
const fitsOrBlank = (text: string, least: number, most: number): boolean =>
  text.trim() === "" || fits(text, least, most);
const isGood = ({ length, room, most }: Typed): boolean =>
  fitsOrBlank(length, 1, 5_000) && fitsOrBlank(room, 0, 2_000) && fits(most, 1, 200);

/** The cells of a crossing that can be typed. */
const cellsOf = ({ kind, length, room, most, classes }: Typed): Readonly<Record<string, string>> => ({
  kind,
  length_mm: textOf(length),
  room_mm: textOf(room),
  max_diameter_mm: textOf(most),
  classes: NET_CLASSES.filter((one) => classes.includes(one)).join(" "),
});
const textOf = (typed: string): string => String(numberOf(typed) ?? "");

function Fields({
  typed,
  kinds,
  change,
}: {
  readonly typed: Typed;
  readonly kinds: readonly Kind[];
  readonly change: (part: Partial<Typed>) => void;
}) {
  const words = useWords();
  const own = words.layout.crossing;
  return (
    <>
      <NativeSelect
        label={own.kind}
        size="sm"
        value={typed.kind}
        disabled={kinds.length === 1}
        onChange={(event) => {
          const kind = kinds.find((one) => one === event.currentTarget.value);
          if (kind !== undefined) change({ kind });
        }}
        data={kinds.map((value) => ({ value, label: words.layout.lane.crossing[value] }))}
      />
      <TextInput
        label={own.length}
        description={own.lengthHint}
        size="sm"
        inputMode="decimal"
        rightSection="mm"
        value={typed.length}
        error={!fitsOrBlank(typed.length, 1, 5_000) && words.layout.place.wrong}
        onChange={(event) => change({ length: event.currentTarget.value })}
      />
      <TextInput
        label={own.room}
        description={own.roomHint}
        size="sm"
        inputMode="decimal"
        rightSection="mm"
        value={typed.room}
        error={!fitsOrBlank(typed.room, 0, 2_000) && words.layout.place.wrong}
        onChange={(event) => change({ room: event.currentTarget.value })}
      />
      <TextInput
        label={words.layout.lane.most}
        size="sm"
        inputMode="decimal"
        rightSection="mm"
        value={typed.most}
        error={!fits(typed.most, 1, 200) && words.layout.place.wrong}
        onChange={(event) => change({ most: event.currentTarget.value })}
      />
      <MultiSelect
        label={words.layout.lane.classes}
        description={words.layout.lane.classesHint}
        size="sm"
        data={[...NET_CLASSES]}
        value={[...typed.classes]}
        onChange={(classes) => change({ classes })}
      />
    </>
  );
}

/** Changes or deletes a crossing that is there. */
export function CrossingForm({
  crossing,
  samePanel,
  failed,
}: {
  readonly crossing: ViewEntry<"layoutCrossings">;
  readonly samePanel: boolean;
  readonly failed: (error: unknown) => void;
}) {
  const words = useWords();
  const desk = useDesk();
  const [typed, setTyped] = useState(BLANK);
  const { id, kind, lengthMm, roomMm, maxMm } = crossing;
  const kept = crossing.classes.join(" ");
  useEffect(() => {
    setTyped({
      kind,
      length: String(lengthMm ?? ""),
      room: String(roomMm ?? ""),
      most: String(maxMm),
      classes: kept === "" ? [] : kept.split(" "),
    });
  }, [kind, lengthMm, roomMm, maxMm, kept]);
  const same =
    typed.kind === kind &&
    numberOf(typed.length) === lengthMm &&
    numberOf(typed.room) === roomMm &&
    numberOf(typed.most) === maxMm &&
    cellsOf(typed).classes === kept;
  const save = (): void => {
    const cells = cellsOf(typed);
    void desk.edit(words.layout.notes.set(id), { kind: "row", table: "crossings", id, cells }).catch(failed);
  };
  const remove = (): void => {
    const rows = [{ table: "crossings", id }] as const;
    void desk.edit(words.layout.notes.remove(id, 1), { kind: "remove", rows }).catch(failed);
  };
  return (
    <form
      className="lane-form"
      aria-label={id}
      onSubmit={(event) => {
        event.preventDefault();
        if (isGood(typed)) save();
      }}
    >
      <Fields
        typed={typed}
        kinds={kindsFor(samePanel)}
        change={(part) => setTyped((before) => ({ ...before, ...part }))}
      />
      <Button type="submit" size="sm" variant="default" disabled={same || !isGood(typed)}>
        {words.common.save}
      </Button>
      <Button size="sm" variant="subtle" onClick={remove}>
        {words.layout.crossing.remove(id)}
      </Button>
    </form>
  );
}

/** Asks what is to be known of a crossing whose two ends were chosen, and makes it. */
export function CrossingDialog({
  draft,
  stage,
  made,
  failed,
}: {
  readonly draft: CrossingDraft;
  readonly stage: Stage;
  readonly made: (id: string) => void;
  readonly failed: (error: unknown) => void;
}) {
  const words = useWords();
  const own = words.layout.crossing;
  const { desk } = stage;
  const { from, to, forget } = draft;
  const known = useView("layoutCrossings", { panelId: from?.panelId ?? "" });
  const [id, setId] = useState("");
  const [taken, setTaken] = useState<ReadonlySet<string>>(new Set());
  const [typed, setTyped] = useState(BLANK);
  const samePanel = from?.panelId === to?.panelId;
  const like = [...(known?.values() ?? [])].find((one) => one.therePanelId === to?.panelId);
  const kinds = kindsFor(samePanel);
  // As the others between these two panels.
  const kind = like !== undefined && kinds.includes(like.kind) ? like.kind : samePanel ? "hole" : "gap";
  const most = String(like?.maxMm ?? USUAL_WAY_MM);
  const opened = from !== null && to !== null;
  useEffect(() => {
    if (!opened) return;
    let wanted = true;
    setTyped({ ...BLANK, kind, most });
    void desk.ask("takenIds", [{ table: "crossings" }]).then((answer) => {
      if (!wanted) return;
      setTaken(new Set(answer));
      setId(freshId("cx.drawn-", new Set(answer)));
    });
    return () => {
      wanted = false;
    };
  }, [opened, desk, kind, most]);
  if (from === null || to === null) return null;
  const wrong = taken.has(id) ? words.layout.copy.taken : isId(id) ? null : words.layout.copy.bad;
  const good = wrong === null && isGood(typed);
  const make = (): void => {
    forget();
    const cells = { id, from: from.id, to: to.id, ...cellsOf(typed) };
    desk
      .edit(words.layout.notes.crossing(id), { kind: "add", rows: [{ table: "crossings", cells }] })
      .then(() => made(id), failed);
  };
  return (
    <Modal opened onClose={forget} title={own.title} closeButtonProps={{ "aria-label": words.common.close }}>
      <form
        className="lane-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (good) make();
        }}
      >
        <p>{own.ends(from.id, to.id)}</p>
        <TextInput
          label={own.id}
          size="sm"
          value={id}
          error={wrong}
          onChange={(event) => setId(event.currentTarget.value)}
        />
        <Fields
          typed={typed}
          kinds={kinds}
          change={(part) => setTyped((before) => ({ ...before, ...part }))}
        />
        <Button type="submit" disabled={!good} data-autofocus>
          {own.make}
        </Button>
      </form>
    </Modal>
  );
}
