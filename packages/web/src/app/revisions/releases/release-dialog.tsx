import { Button, Modal, Progress, Textarea, TextInput } from "@mantine/core";
import { type Release, type ReleaseJob, releaseName } from "@pinwright/contract";
import { IconAlertTriangle, IconCircleCheck } from "@tabler/icons-react";
import { type FormEvent, useState, useSyncExternalStore } from "react";
import { Link } from "wouter";
import { useDesk, useOne, useSync, useView } from "../../book/desk.tsx";
import { useTrouble } from "../../trouble.ts";
import { useWords } from "../../words.tsx";
import { nextReleaseName } from "../next-name.ts";
import type { useReleaseJob } from "../use-releases.ts";

type Making = ReturnType<typeof useReleaseJob>;

/** Gives the machine as it is now a name: what stands in the way, what is written down with it, and how far it is. */
export function ReleaseDialog({
  releases,
  making,
  close,
}: {
  readonly releases: readonly Release[];
  readonly making: Making;
  readonly close: () => void;
}) {
  const { revisionsApp, common } = useWords();
  const own = revisionsApp.make;
  const leave = (): void => {
    making.clear();
    close();
  };
  return (
    <Modal
      opened
      onClose={leave}
      title={own.title}
      size="lg"
      closeButtonProps={{ "aria-label": common.close }}
    >
      {making.job === null ? (
        <ReleaseForm releases={releases} make={making.make} close={close} />
      ) : (
        <Going job={making.job} cancel={making.cancel} close={leave} />
      )}
    </Modal>
  );
}

function ReleaseForm({
  releases,
  make,
  close,
}: {
  readonly releases: readonly Release[];
  readonly make: Making["make"];
  readonly close: () => void;
}) {
  const { revisionsApp, common, shell } = useWords();
  const own = revisionsApp.make;
  const desk = useDesk();
  const changeNo = useSyncExternalStore(desk.subscribe, () => desk.changeNo);
  const obstacles = useObstacles();
  const trouble = useTrouble();
  const [name, setName] = useState(() => nextReleaseName(releases.map((release) => release.name)));
  const [note, setNote] = useState("");
  const [failed, setFailed] = useState("");
  const [busy, setBusy] = useState(false);
  const isTaken = releases.some((release) => release.name === name.trim());
  const isName = releaseName.safeParse(name.trim()).success;
  const newest = releases[0];
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    setBusy(true);
    setFailed("");
    make(name.trim(), note.trim()).catch((error: unknown) => {
      setFailed(trouble(error));
      setBusy(false);
    });
  };
  return (
    <form onSubmit={submit} className="release-form">
      <p>{own.about(changeNo)}</p>
      {newest !== undefined && newest.changeNo === changeNo && (
        <p className="amber-text">{own.same(newest.name)}</p>
      )}
      <TextInput
        label={own.name}
        description={own.nameHint}
        value={name}
        maxLength={12}
        required
        error={isTaken ? shell.trouble.taken : undefined}
        onChange={(event) => setName(event.currentTarget.value)}
      />
      <Textarea
        label={own.note}
        placeholder={own.noteHint}
        value={note}
        maxLength={2000}
        autosize
        minRows={3}
        data-autofocus
        onChange={(event) => setNote(event.currentTarget.value)}
      />
      <Obstacles found={obstacles} close={close} />
      <p role="alert" className="error-text">
        {failed}
      </p>
      <div className="release-buttons">
        <Button variant="default" onClick={close}>
          {common.cancel}
        </Button>
        <Button type="submit" loading={busy} disabled={!isName || isTaken || obstacles.stands}>
          {own.go}
        </Button>
      </div>
    </form>
  );
}

interface Found {
  readonly errors: number;
  readonly faults: number;
  readonly warnings: number;
  readonly notes: number;
  readonly accepted: number;
  readonly unsent: boolean;
  /** Whether anything of it stands in the way. */
  readonly stands: boolean;
}

function useObstacles(): Found {
  const summary = useOne("summary", null);
  const faults = useView("faults", null);
  const sync = useSync();
  const errors = summary?.errors ?? 0;
  const unsent = sync.state !== "saved";
  return {
    errors,
    faults: faults?.size ?? 0,
    warnings: summary?.warnings ?? 0,
    notes: summary?.notes ?? 0,
    accepted: summary?.accepted ?? 0,
    unsent,
    stands: errors > 0 || (faults?.size ?? 0) > 0 || unsent || summary === undefined || faults === null,
  };
}

function Obstacles({ found, close }: { readonly found: Found; readonly close: () => void }) {
  const own = useWords().revisionsApp.make;
  const { bookId } = useDesk();
  const stands = [
    found.errors === 0 ? null : own.errors(found.errors),
    found.faults === 0 ? null : own.faults(found.faults),
    found.unsent ? own.unsent : null,
  ].filter((text) => text !== null);
  return (
    <section aria-label={own.stands}>
      {stands.length === 0 ? (
        <p>
          <IconCircleCheck size={18} aria-hidden className="release-sign" /> {own.nothing}
        </p>
      ) : (
        <>
          <b>{own.stands}</b>
          <ul>
            {stands.map((text) => (
              <li key={text} className="error-text">
                {text}
              </li>
            ))}
          </ul>
          {(found.errors > 0 || found.faults > 0) && (
            <Link href={`/b/${bookId}/findings?severity=error`} onClick={close}>
              <IconAlertTriangle size={16} aria-hidden className="release-sign" /> {own.seeFindings}
            </Link>
          )}
        </>
      )}
      <p className="dim">{own.open(found.warnings, found.notes)}</p>
      {found.accepted > 0 && <p className="dim">{own.accepted(found.accepted)}</p>}
    </section>
  );
}

function Going({
  job,
  cancel,
  close,
}: {
  readonly job: ReleaseJob;
  readonly cancel: () => void;
  readonly close: () => void;
}) {
  const own = useWords().revisionsApp.make;
  const isGoing = job.state === "waiting" || job.state === "running";
  const text =
    job.total === 0 ? own.preparing : job.done >= job.total ? own.keeping : own.progress(job.done, job.total);
  return (
    <div className="release-form">
      {isGoing ? (
        <>
          <b>{own.going(job.name)}</b>
          <Progress value={job.total === 0 ? 0 : (100 * job.done) / job.total} aria-label={text} />
          <p>
            {text} {job.total > 0 && job.done < job.total && <span className="dim">{job.now}</span>}
          </p>
        </>
      ) : (
        <p role="status" className={job.state === "failed" ? "error-text" : undefined}>
          {job.state === "done"
            ? own.done(job.name)
            : job.state === "cancelled"
              ? own.cancelled
              : own.failed(job.now)}
        </p>
      )}
      <div className="release-buttons">
        {isGoing ? (
          <Button variant="default" onClick={cancel}>
            {own.cancel}
          </Button>
        ) : (
          <Button onClick={close}>{own.close}</Button>
        )}
      </div>
    </div>
  );
}
