import { Button, Checkbox, SegmentedControl } from "@mantine/core";
import type { SheetRequest } from "@pinwright/contract";
import { sheetWords } from "@pinwright/words";
import { IconPrinter } from "@tabler/icons-react";
import { type ReactNode, useState } from "react";
import { CountField } from "../book/count-field.tsx";
import { useSpeech } from "../words.tsx";
import {
  ASSEMBLY_SHEET_KINDS,
  LANGUAGES,
  MACHINE_SHEET_KINDS,
  MAKING_SHEET_KINDS,
  SHEET_FORMATS,
  SHEET_KINDS,
  type SheetFormat,
  type SheetLanguage,
} from "./sheet-kinds.ts";
import "./sheets.css";

const MOST_MACHINES = 1000;

type Wanted = Omit<SheetRequest, "id">;

/** Kinds, files and language of sheets to make, and the button that asks for them. */
export function ChooseSheets({
  harnessIds,
  ofMachine = false,
  asked = null,
  machines: askedMachines = 1,
  onMake,
  children,
}: {
  /** Harnesses that were chosen elsewhere. */
  readonly harnessIds: readonly string[];
  /** Whether sheets of the whole machine are offered, too. */
  readonly ofMachine?: boolean;
  /** Kinds that are chosen at first; null: as usual. */
  readonly asked?: ReadonlySet<string> | null;
  /** Machines that are made together, at first. */
  readonly machines?: number;
  readonly onMake: (wanted: Wanted) => Promise<unknown>;
  readonly children?: ReactNode;
}) {
  const { words: all, language } = useSpeech();
  const words = all.prints;
  const kindWords = sheetWords(language).kinds;
  const first = <K extends string>(all: readonly K[], usual: boolean): readonly K[] =>
    asked === null ? (usual ? all : []) : all.filter((kind) => asked.has(kind));
  const [machineKinds, setMachineKinds] = useState(first(MACHINE_SHEET_KINDS, ofMachine));
  // There are many of them, and who wants one kind seldom wants the others.
  const [assemblyKinds, setAssemblyKinds] = useState(first(ASSEMBLY_SHEET_KINDS, false));
  const [makingKinds, setMakingKinds] = useState(first(MAKING_SHEET_KINDS, false));
  const [kinds, setKinds] = useState(first(SHEET_KINDS, true));
  const [formats, setFormats] = useState<readonly SheetFormat[]>(["pdf"]);
  const [sheetLanguage, setSheetLanguage] = useState<SheetLanguage>(language);
  const [machines, setMachines] = useState(askedMachines);
  const [busy, setBusy] = useState(false);
  const [failed, setFailed] = useState("");
  // Without a harness there is nothing to make the sheets of a harness of.
  const harnessKinds = harnessIds.length > 0 ? kinds : [];
  const ready =
    machineKinds.length + assemblyKinds.length + makingKinds.length + harnessKinds.length > 0 &&
    formats.length > 0;
  const make = async () => {
    setBusy(true);
    setFailed("");
    try {
      await onMake({
        harnessIds: [...harnessIds],
        kinds: [...machineKinds, ...assemblyKinds, ...makingKinds, ...harnessKinds],
        formats: [...formats],
        language: sheetLanguage,
        machines,
      });
    } catch (error) {
      setFailed(words.failed(error instanceof Error ? error.message : String(error)));
    }
    setBusy(false);
  };
  return (
    <div className="choose-sheets">
      <div className="choose-sheets-go">
        <Button
          size="md"
          leftSection={<IconPrinter size={18} />}
          disabled={!ready}
          loading={busy}
          onClick={() => void make()}
        >
          {words.make}
        </Button>
        <span className="dim">
          {ready
            ? words.makeSays(
                machineKinds.length,
                assemblyKinds.length + makingKinds.length,
                harnessKinds.length === 0 ? 0 : harnessIds.length,
                kinds.length,
              )
            : words.chooseFirst}
        </span>
      </div>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
      {ofMachine && (
        <Choices
          title={words.machine}
          all={MACHINE_SHEET_KINDS}
          chosen={machineKinds}
          onChoose={setMachineKinds}
          nameOf={(kind) => kindWords[kind]}
        />
      )}
      {ofMachine && (
        <Choices
          title={words.assembly}
          all={ASSEMBLY_SHEET_KINDS}
          chosen={assemblyKinds}
          onChoose={setAssemblyKinds}
          nameOf={(kind) => kindWords[kind]}
        />
      )}
      {ofMachine && (
        <Choices
          title={words.making}
          all={MAKING_SHEET_KINDS}
          chosen={makingKinds}
          onChoose={setMakingKinds}
          nameOf={(kind) => kindWords[kind]}
        >
          <CountField label={words.machines} value={machines} most={MOST_MACHINES} onCount={setMachines} />
        </Choices>
      )}
      {children}
      <Choices
        title={words.kinds}
        all={SHEET_KINDS}
        chosen={kinds}
        onChoose={setKinds}
        nameOf={(kind) => kindWords[kind]}
      />
      <Choices
        title={words.formats}
        all={SHEET_FORMATS}
        chosen={formats}
        onChoose={setFormats}
        nameOf={(format) => words.formatNames[format]}
      />
      <fieldset>
        <legend>{words.language}</legend>
        <SegmentedControl
          aria-label={words.language}
          value={sheetLanguage}
          onChange={(value) => setSheetLanguage(LANGUAGES.find((one) => one === value) ?? "en")}
          data={LANGUAGES.map((value) => ({ value, label: words.languages[value] }))}
        />
      </fieldset>
    </div>
  );
}

/** A list of boxes to tick, all or none of them with one press. */
export function Choices<T extends string>({
  title,
  all,
  chosen,
  onChoose,
  nameOf,
  children,
}: {
  readonly title: string;
  readonly all: readonly T[];
  readonly chosen: readonly T[];
  readonly onChoose: (chosen: readonly T[]) => void;
  readonly nameOf: (one: T) => string;
  /** What else is to be said for them. */
  readonly children?: ReactNode;
}) {
  const { words } = useSpeech();
  const picked = new Set<string>(chosen);
  return (
    <fieldset>
      <legend>
        {title} <span className="dim">{words.prints.chosen(picked.size, all.length)}</span>
      </legend>
      <div className="choices-all">
        <Button variant="subtle" size="compact-sm" onClick={() => onChoose(all)}>
          {words.prints.all}
        </Button>
        <Button variant="subtle" size="compact-sm" onClick={() => onChoose([])}>
          {words.prints.none}
        </Button>
      </div>
      <div className="choices">
        {all.map((one) => (
          <Checkbox
            key={one}
            label={nameOf(one)}
            checked={picked.has(one)}
            onChange={(event) =>
              onChoose(
                event.currentTarget.checked
                  ? all.filter((other) => other === one || picked.has(other))
                  : chosen.filter((other) => other !== one),
              )
            }
          />
        ))}
      </div>
      {children}
    </fieldset>
  );
}
