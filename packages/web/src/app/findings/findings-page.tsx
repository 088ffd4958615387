import { Button, NativeSelect, SegmentedControl, TextInput } from "@mantine/core";
import { findingWords } from "@pinwright/words";
import { IconX } from "@tabler/icons-react";
import { useMemo, useState } from "react";
import { useSearchParams } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import { useMay } from "../session/session.tsx";
import { useSpeech, useWords } from "../words.tsx";
import { AcceptDialog } from "./accept-dialog.tsx";
import { type Chosen, chosenIn, groupsOf, paramsOf, type Said, SEVERITIES, SHOWN } from "./chosen.ts";
import { FaultList } from "./fault-list.tsx";
import { FindingGroupBlock } from "./finding-group.tsx";
import { SpareAcceptances } from "./spare-acceptances.tsx";
import "./findings.css";

/** Everything that is wrong with the book: faults of its texts, and findings of the checks. */
export default function FindingsPage() {
  const { words, language } = useSpeech();
  const { checks } = words;
  const desk = useDesk();
  const entries = useView("findings", null);
  const faults = useView("faults", null);
  const mayAccept = useMay("lead");
  const [params, setParams] = useSearchParams();
  const [accepting, setAccepting] = useState<readonly Said[] | null>(null);
  const chosen = chosenIn(params);
  const all = useMemo(
    () =>
      [...(entries ?? [])].map(
        ([key, entry]): Said => ({
          key,
          entry,
          sentence: findingWords(language, entry.finding.rule).say(entry.finding),
        }),
      ),
    [entries, language],
  );
  if (entries === null || faults === null) return <p className="page dim">{checks.loading}</p>;
  const groups = groupsOf(all, chosen);
  const shownFaults =
    chosen.shown === "accepted" ||
    chosen.rule !== null ||
    chosen.about !== null ||
    !(chosen.severity ?? "error").startsWith("error")
      ? []
      : [...faults.values()].filter((fault) =>
          `${fault.file} ${fault.column} ${fault.value}`.toLowerCase().includes(chosen.text.toLowerCase()),
        );
  const reopen = ({ entry }: Said) => {
    const note = checks.reopenNote(findingWords(language, entry.finding.rule).title);
    void desk.edit(note, { kind: "reopen", subjects: [entry.subject] });
  };
  const nothing = shownFaults.length === 0 && groups.length === 0;
  const everything = Object.keys(paramsOf(chosen)).length === 0;
  return (
    <>
      <div className="findings-head">
        <h2>{words.shell.sections.findings}</h2>
        <Counts all={all} faults={faults.size} />
        <Filter all={all} chosen={chosen} choose={(next) => setParams(paramsOf(next), { replace: true })} />
      </div>
      <div className="findings">
        {nothing && everything && (
          <>
            <h3>{checks.noneTitle}</h3>
            <p>{checks.none}</p>
          </>
        )}
        {nothing && !everything && (
          <p>
            {checks.noMatch}{" "}
            <Button variant="default" size="compact-sm" onClick={() => setParams({}, { replace: true })}>
              {checks.clear}
            </Button>
          </p>
        )}
        {shownFaults.length > 0 && <FaultList faults={shownFaults} />}
        {groups.map((group) => (
          <FindingGroupBlock
            key={`${group.severity} ${group.rule}`}
            group={group}
            mayAccept={mayAccept}
            accept={setAccepting}
            reopen={reopen}
          />
        ))}
        {chosen.shown !== "open" && <SpareAcceptances />}
      </div>
      {accepting !== null && <AcceptDialog said={accepting} close={() => setAccepting(null)} />}
    </>
  );
}

function Counts({ all, faults }: { readonly all: readonly Said[]; readonly faults: number }) {
  const { checks } = useWords();
  const open = (severity: Said["entry"]["finding"]["severity"]) =>
    all.filter(({ entry: { finding } }) => finding.severity === severity && finding.accepted === null).length;
  return (
    <div className="counts" role="status">
      <span>{checks.counts(open("error"), open("warning"), open("note"))}</span>
      <span className="dim">
        {checks.acceptedCount(all.filter(({ entry }) => entry.finding.accepted !== null).length)}
      </span>
      {faults > 0 && <span className="error-text">{checks.faultCount(faults)}</span>}
    </div>
  );
}

function Filter({
  all,
  chosen,
  choose,
}: {
  readonly all: readonly Said[];
  readonly chosen: Chosen;
  readonly choose: (chosen: Chosen) => void;
}) {
  const { words, language } = useSpeech();
  const { checks, common } = words;
  const rules = [...new Set(all.map(({ entry }) => entry.finding.rule))].sort();
  return (
    <div className="findings-filter">
      <SegmentedControl
        size="sm"
        aria-label={checks.show.label}
        value={chosen.shown}
        data={SHOWN.map((value) => ({ value, label: checks.show[value] }))}
        onChange={(value) =>
          choose({ ...chosen, shown: SHOWN.find((shown) => shown === value) ?? chosen.shown })
        }
      />
      <NativeSelect
        aria-label={checks.severity}
        value={chosen.severity ?? ""}
        data={[
          { value: "", label: checks.anySeverity },
          ...SEVERITIES.map((value) => ({ value, label: common.severity[value] })),
        ]}
        onChange={(event) => {
          const { value } = event.currentTarget;
          choose({ ...chosen, severity: SEVERITIES.find((one) => one === value) ?? null });
        }}
      />
      <NativeSelect
        aria-label={checks.rule}
        value={chosen.rule ?? ""}
        data={[
          { value: "", label: checks.anyRule },
          ...rules.map((value) => ({ value, label: findingWords(language, value).title })),
        ]}
        onChange={(event) => choose({ ...chosen, rule: event.currentTarget.value || null })}
      />
      <TextInput
        aria-label={checks.text}
        placeholder={checks.textHint}
        value={chosen.text}
        onChange={(event) => choose({ ...chosen, text: event.currentTarget.value })}
      />
      {chosen.about !== null && (
        <Button
          variant="default"
          rightSection={<IconX size={14} />}
          title={checks.clear}
          onClick={() => choose({ ...chosen, about: null })}
        >
          {checks.about(chosen.about)}
        </Button>
      )}
    </div>
  );
}
