import { Button, Textarea } from "@mantine/core";
import type { Block, UnitGate as Gate } from "@pinwright/contract";
import type { UnitState } from "@pinwright/engine";
import { type FormEvent, useState } from "react";
import { Link } from "wouter";
import { call } from "../../../api/call.ts";
import { useDevice, useOwnFacts } from "../../../floor/device.tsx";
import { useDesk, useView } from "../../book/desk.tsx";
import { useMay, useSession } from "../../session/session.tsx";
import { useTrouble } from "../../trouble.ts";
import { useWords } from "../../words.tsx";
import { unitAddress } from "../address.ts";
import { usePeople, useWhen } from "../names.tsx";
import { useRecallText } from "../trace/recall-text.ts";
import { useAsked } from "../use-asked.ts";
import { useBlockAddress, useBlockName } from "./block-text.ts";
import { useDefectWords } from "./unit-defects.tsx";

/** What protects people first, then what is wrong, then what is still to be done. */
const GROUPS: readonly Block["gate"][] = ["test", "recall", "defect", "step", "fit"];
/** Blocks of a group that are shown before all are asked for. */
const FIRST = 6;

/** What keeps a unit from shipping, how it is lifted, and its release. */
export function UnitGate({ state }: { readonly state: UnitState }) {
  const { benchUnit: own } = useWords();
  const { unit } = state;
  // What this browser sends changes what holds the unit: the server is asked again.
  const sent = useOwnFacts().filter(({ sentAt }) => sentAt !== null).length;
  const { answer, failed, again } = useAsked(`gate ${unit} ${sent}`, (signal) =>
    call("unitGate", { parts: { unit }, signal }),
  );
  const [last, setLast] = useState<Gate | null>(null);
  if (answer !== undefined && answer !== last) setLast(answer);
  // While the server works the answer out anew, what it said before stays.
  const gate = answer ?? last;
  return (
    <section aria-labelledby="unit-gate" className="unit-gate">
      <h3 id="unit-gate">{own.gate.title}</h3>
      {failed !== "" && (
        <p className="error-text">
          {own.gate.unheard}
          {failed}
        </p>
      )}
      {gate === null ? (
        failed === "" && <p className="dim">{own.gate.asking}</p>
      ) : (
        <Blocks gate={gate} state={state} released={again} />
      )}
    </section>
  );
}

function Blocks({
  gate,
  state,
  released,
}: {
  readonly gate: Gate;
  readonly state: UnitState;
  readonly released: () => void;
}) {
  const { benchUnit: own } = useWords();
  const when = useWhen();
  const mayRelease = useMay("lead");
  const standing = gate.blocks.filter(({ lifted }) => !lifted);
  const lifted = gate.blocks.length - standing.length;
  return (
    <>
      <p
        className={standing.length > 0 ? "amber-text" : gate.shippable ? "bench-released" : ""}
        role="status"
      >
        {standing.length > 0
          ? own.gate.held(standing.length)
          : gate.shippable
            ? own.gate.shippable
            : own.gate.free}{" "}
        {standing.length > 0 && gate.released !== null && own.gate.heldAgain(when(gate.released.at))}{" "}
        {lifted > 0 && <span className="dim">({own.gate.lifted(lifted)})</span>}
      </p>
      {standing.length === 0 &&
        !gate.shippable &&
        (mayRelease ? <Release unit={gate.unit} released={released} /> : <p>{own.gate.releaseHint}</p>)}
      {GROUPS.map((group) => {
        const blocks = gate.blocks.filter((block) => block.gate === group);
        if (blocks.length === 0) return null;
        const title = own.gate.groups[group];
        return group === "recall" ? (
          <RecallGroup key={group} title={title} blocks={blocks} state={state} />
        ) : (
          <Group key={group} title={title} blocks={blocks} state={state} />
        );
      })}
    </>
  );
}

function Release({ unit, released }: { readonly unit: string; readonly released: () => void }) {
  const { benchUnit: own } = useWords();
  const { status } = useSession();
  const trouble = useTrouble();
  const [isAt, setAt] = useState(false);
  const [failed, setFailed] = useState("");
  const release = (): void => {
    setAt(true);
    setFailed("");
    call("releaseUnit", { parts: { unit }, body: {}, token: status.token })
      .then(released, (error: unknown) => {
        setFailed(trouble(error));
        // Something came between: what holds it now is shown.
        released();
      })
      .finally(() => setAt(false));
  };
  return (
    <p>
      <Button onClick={release} loading={isAt}>
        {own.gate.release}
      </Button>{" "}
      {failed !== "" && <span className="error-text">{failed}</span>}
    </p>
  );
}

interface GroupOf {
  readonly title: string;
  readonly blocks: readonly Block[];
  readonly state: UnitState;
}

/** Recalls by what they speak of: nobody knows one by its name. */
function RecallGroup(props: GroupOf) {
  const textOf = useRecallText();
  const { answer } = useAsked("recalls", (signal) => call("recalls", { parts: {}, signal }));
  return (
    <Group
      {...props}
      nameOf={(block) => {
        const recall = answer?.find((one) => one.recall === block.of);
        return recall === undefined ? block.of : `${textOf(recall)} (${recall.begun.why})`;
      }}
    />
  );
}

function Group({
  title,
  blocks,
  state,
  nameOf,
}: GroupOf & {
  /** What a block is about; absent: by its kind. */
  readonly nameOf?: (block: Block) => string;
}) {
  const { benchUnit: own } = useWords();
  const [isAll, setAll] = useState(false);
  // What stands comes first, and of it what nobody can lift.
  const sorted = [...blocks].sort(
    (a, b) => Number(a.lifted) - Number(b.lifted) || Number(b.firm) - Number(a.firm),
  );
  const shown = isAll || sorted.length <= FIRST + 1 ? sorted : sorted.slice(0, FIRST);
  return (
    <>
      <h4>
        {title} <span className="dim">{blocks.length}</span>
      </h4>
      <ul className="unit-blocks">
        {shown.map((block) => (
          <li key={`${block.unit} ${block.of} ${block.why}`}>
            <BlockLine
              block={block}
              state={state}
              {...(nameOf === undefined ? {} : { called: nameOf(block) })}
            />
          </li>
        ))}
      </ul>
      {shown.length < sorted.length && (
        <button type="button" className="link-button" onClick={() => setAll(true)}>
          {own.gate.all(sorted.length)}
        </button>
      )}
    </>
  );
}

function BlockLine({
  block,
  state,
  called,
}: {
  readonly block: Block;
  readonly state: UnitState;
  readonly called?: string;
}) {
  const { benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const nameOf = useBlockName();
  const addressOf = useBlockAddress();
  const says = useDefectWords();
  const mayLift = useMay("lead");
  const [isLifting, setLifting] = useState(false);
  const parts = useView("benchNames", null);
  const isPart = block.gate === "fit" && block.why === "wrong" && parts?.has(`part ${block.of}`) === true;
  const address = addressOf(block);
  const defect = block.gate === "defect" ? state.defects.get(block.of) : undefined;
  const name = called ?? (defect === undefined ? nameOf(block) : says.what(defect.what));
  return (
    <>
      <span className={block.lifted ? "dim" : ""}>
        {block.firm && !block.lifted && <b className="error-text">{own.gate.firm} </b>}
        {address === null ? <b>{name}</b> : <Link href={address}>{name}</Link>}{" "}
        {isPart ? own.gate.wrongPart : own.gate.why[block.why]}
        {block.unit !== state.unit && (
          <>
            {" "}
            <Link href={unitAddress(bookId, block.unit)}>{own.gate.on(block.unit)}</Link>
          </>
        )}
        {block.lifted && ` (${own.gate.isLifted})`}
      </span>
      {mayLift && !block.firm && !block.lifted && !isLifting && (
        <Button
          size="compact-sm"
          variant="default"
          onClick={() => setLifting(true)}
          // What is read aloud holds what is seen, so that whoever speaks to the page finds it.
          aria-label={`${own.gate.lift} ${name}`}
        >
          {own.gate.lift}
        </Button>
      )}
      {isLifting && <Lift block={block} name={name} close={() => setLifting(false)} />}
    </>
  );
}

/** Says why a unit may ship all the same, in the name of whoever is signed in. */
function Lift({
  block,
  name,
  close,
}: {
  readonly block: Block;
  readonly name: string;
  readonly close: () => void;
}) {
  const { benchUnit: own } = useWords();
  const { write } = useDevice();
  const { status } = useSession();
  const nameOf = usePeople();
  const trouble = useTrouble();
  const [why, setWhy] = useState("");
  const [failed, setFailed] = useState("");
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const { unit, gate, of } = block;
    write([{ kind: "override", unit, gate, of, why: why.trim() }]).then(close, (error: unknown) =>
      setFailed(trouble(error)),
    );
  };
  return (
    <form className="unit-lift" onSubmit={submit} aria-label={own.gate.liftTitle(name)}>
      <Textarea
        label={own.gate.liftWhy}
        description={own.gate.liftBy(nameOf(status.person?.id ?? "local"))}
        autosize
        minRows={2}
        data-autofocus
        value={why}
        onChange={(event) => setWhy(event.currentTarget.value)}
      />
      <div className="bench-buttons">
        <Button type="submit" disabled={why.trim() === ""}>
          {own.gate.liftDo}
        </Button>
        <Button variant="default" onClick={close}>
          {own.gate.cancel}
        </Button>
      </div>
      {failed !== "" && <p className="error-text">{failed}</p>}
    </form>
  );
}
