import { Button } from "@mantine/core";
import { useDesk, useView } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { useWords } from "../words.tsx";

/** Acceptances that belong to no finding any more, so that they can be cleared away. */
export function SpareAcceptances() {
  const words = useWords().checks;
  const desk = useDesk();
  const spare = useView("spareAcceptances", null);
  const mayAccept = useMay("lead");
  if (spare === null || spare.size === 0) return null;
  const all = [...spare];
  const remove = () =>
    void desk.edit(words.spareNote, { kind: "reopen", subjects: all.map(([, { subject }]) => subject) });
  return (
    <section className="finding-group">
      <header>
        <h3>
          {words.spareTitle} <span className="dim">{all.length}</span>
        </h3>
        {mayAccept && (
          <Button variant="default" size="compact-sm" onClick={remove}>
            {words.spareGo}
          </Button>
        )}
        <p style={{ margin: 0 }}>{words.spareWhy}</p>
      </header>
      <ul>
        {all.map(([row, { subject, by, reason }]) => (
          <li className="finding" key={row}>
            <span />
            <div className="words">
              {subject}
              <p className="bounds">
                {words.acceptedBy(by || words.noName)}: {reason}
              </p>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
