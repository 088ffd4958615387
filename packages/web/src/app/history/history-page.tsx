import { Button, SegmentedControl } from "@mantine/core";
import { SHOP_ID } from "@pinwright/contract";
import { useState } from "react";
import { useSearchParams } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { useSpeech } from "../words.tsx";
import { ChangeItem } from "./change-item.tsx";
import { byDay } from "./changed-rows.ts";
import { noteText } from "./note-text.ts";
import { Snapshots } from "./snapshots.tsx";
import { useHistory } from "./use-history.ts";
import "./history.css";

/** What was changed, by whom and when, and the named states of the book. */
export default function HistoryPage() {
  const { words } = useSpeech();
  const { history } = words;
  const { bookId } = useDesk();
  const [params, setParams] = useSearchParams();
  const ofShop = params.get("of") === SHOP_ID;
  const of = ofShop ? SHOP_ID : bookId;
  return (
    <div className="history">
      <section>
        <h2>{words.shell.sections.history}</h2>
        <div className="history-tools">
          <SegmentedControl
            size="sm"
            aria-label={history.of}
            value={ofShop ? "shop" : "book"}
            data={[
              { value: "book", label: history.ofBook },
              { value: "shop", label: history.ofShop },
            ]}
            onChange={(value) => setParams(value === "shop" ? { of: SHOP_ID } : {}, { replace: true })}
          />
          <UndoMine />
        </div>
        <ChangeList of={of} />
      </section>
      <Snapshots key={of} of={of} />
    </div>
  );
}

function UndoMine() {
  const { history } = useSpeech().words;
  const desk = useDesk();
  const mayEdit = useMay("lead");
  const [said, setSaid] = useState("");
  const trouble = useTrouble();
  if (!mayEdit) return null;
  const undo = async () => {
    try {
      setSaid(history.undone(noteText(history, await desk.undo())));
    } catch (error) {
      setSaid(trouble(error));
    }
  };
  return (
    <>
      <Button variant="default" size="compact-md" onClick={() => void undo()}>
        {history.undoMine}
      </Button>
      <span role="status" className="dim">
        {said}
      </span>
    </>
  );
}

function ChangeList({ of }: { readonly of: string }) {
  const { words, language } = useSpeech();
  const { history, common } = words;
  const { heads, failed, older } = useHistory(of);
  if (failed !== null && heads === null) return <p className="error-text">{history.failed(failed)}</p>;
  if (heads === null) return <p className="dim">{common.loading}</p>;
  if (heads.length === 0) return <p>{history.none}</p>;
  const day = new Intl.DateTimeFormat(language, { dateStyle: "full" });
  const time = new Intl.DateTimeFormat(language, { hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  return (
    <>
      {byDay(heads, (at) => day.format(at)).map((group) => (
        <section key={group.day}>
          <h3>{group.day}</h3>
          {group.heads.map((head) => (
            <ChangeItem key={`${of} ${head.no}`} of={of} head={head} time={time.format(new Date(head.at))} />
          ))}
        </section>
      ))}
      {older !== null && (
        <Button variant="subtle" onClick={older}>
          {history.older}
        </Button>
      )}
    </>
  );
}
