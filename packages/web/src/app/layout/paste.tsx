import { Button, Modal, TextInput } from "@mantine/core";
import { isId } from "@pinwright/book";
import { useEffect, useState } from "react";
import { useWords } from "../words.tsx";
import { rowsOf, type Stage } from "./actions.ts";
import { proposedId } from "./geometry/names.ts";
import type { Scene } from "./scene.ts";

type Rows = ReturnType<typeof rowsOf>;

/** What was copied, and whether it is about to be pasted. */
export interface Clipboard {
  readonly rows: Rows;
  readonly opened: boolean;
  /** Panel that it was copied from. */
  readonly from: string;
  readonly copy: (scene: Scene, ids: readonly string[], panelId: string) => number;
  readonly open: () => void;
  readonly close: () => void;
}

export function useClipboard(): Clipboard {
  const [held, setHeld] = useState<{ readonly rows: Rows; readonly from: string }>({ rows: [], from: "" });
  const [opened, setOpened] = useState(false);
  return {
    ...held,
    opened: opened && held.rows.length > 0,
    copy: (scene, ids, from) => {
      const rows = rowsOf(scene, ids);
      if (rows.length > 0) setHeld({ rows, from });
      return rows.length;
    },
    open: () => setOpened(true),
    close: () => setOpened(false),
  };
}

/** Copies on the same side come to lie a little beside what they are copied from. */
const BESIDE_MM = 10;

/** Asks for the ids of the copies, and pastes. */
export function PasteDialog({
  clipboard,
  stage,
  select,
  failed,
}: {
  readonly clipboard: Clipboard;
  readonly stage: Stage;
  readonly select: (ids: readonly string[]) => void;
  readonly failed: (error: unknown) => void;
}) {
  const words = useWords();
  const own = words.layout.copy;
  const { rows, opened, close, from } = clipboard;
  const [ids, setIds] = useState<readonly string[]>([]);
  const [taken, setTaken] = useState<ReadonlySet<string>>(new Set());
  const { desk } = stage;
  useEffect(() => {
    if (!opened) return;
    let wanted = true;
    void desk.ask("takenIds", rows).then((answer) => {
      if (!wanted) return;
      const known = new Set(answer);
      setTaken(new Set(answer));
      setIds(
        rows.map(({ id }) => {
          const proposed = proposedId(id, known);
          known.add(proposed);
          return proposed;
        }),
      );
    });
    return () => {
      wanted = false;
    };
  }, [opened, rows, desk]);
  if (!opened || ids.length !== rows.length) return null;
  const wrong = (id: string, i: number): string | null => {
    if (taken.has(id) || ids.indexOf(id) !== i) return own.taken;
    return isId(id) ? null : own.bad;
  };
  const good = ids.every((id, i) => wrong(id, i) === null);
  const paste = async () => {
    const by = from === stage.panelId ? BESIDE_MM : 0;
    close();
    await desk
      .edit(words.layout.notes.paste(rows.length), {
        kind: "copy",
        rows: rows.map((row, i) => ({ ...row, newId: ids[i] ?? "" })),
        dxMm: stage.side === "under" ? -by : by,
        dyMm: -by,
        panelId: stage.panelId,
        side: stage.side,
      })
      .then(() => select(ids), failed);
  };
  return (
    <Modal opened onClose={close} title={own.title}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (good) void paste();
        }}
      >
        <p className="dim">
          {own.ids}. {own.wiring}
        </p>
        <div className="paste-ids">
          {rows.map((row, i) => (
            <TextInput
              key={row.id}
              label={row.id}
              size="sm"
              value={ids[i] ?? ""}
              error={wrong(ids[i] ?? "", i)}
              onChange={(event) => {
                const { value } = event.currentTarget;
                setIds(ids.map((id, k) => (k === i ? value : id)));
              }}
            />
          ))}
        </div>
        <Button type="submit" disabled={!good} data-autofocus>
          {own.go}
        </Button>
      </form>
    </Modal>
  );
}
