import { Button, FileButton } from "@mantine/core";
import { drawingForm } from "@pinwright/book";
import { type BookFile, pathTo } from "@pinwright/contract";
import { IconDownload, IconUpload } from "@tabler/icons-react";
import { type DragEvent, useState } from "react";
import { call } from "../../api/call.ts";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useMay, useSession } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { useWords } from "../words.tsx";
import { fileState, hashOf, isTooLarge, KIND_OF_FORM, nameFor, sizeText } from "./attach.ts";
import { useEdit } from "./use-edit.ts";

type Detail = ViewEntry<"outsideDetail">;
type Drawing = Detail["files"][number];

const ACCEPTED = ".pdf,.dxf,.svg,.step,.stp";

/** The files that a part is made from, by revision; more can be attached to the present one. */
export function PartFiles({
  detail,
  files,
  refresh,
}: {
  readonly detail: Detail;
  readonly files: ReadonlyMap<string, BookFile> | null;
  readonly refresh: () => Promise<void>;
}) {
  const own = useWords().outside.files;
  const mayEdit = useMay("designer");
  const { edit, failed } = useEdit();
  const remove = ({ file, revision }: Drawing): void => {
    const gone = [{ table: "drawings", key: { part: detail.id, revision, file } }];
    void edit(own.notes.removed(file, detail.id), { kind: "put", rows: [], gone });
  };
  const noteHash = ({ file, revision }: Drawing, sha256: string): void => {
    const rows = [{ table: "drawings", key: { part: detail.id, revision, file }, cells: { sha256 } }];
    void edit(own.notes.hashed(file), { kind: "put", rows });
  };
  return (
    <section>
      <h3>{own.title}</h3>
      <p className="dim">{own.about}</p>
      {detail.files.length > 0 && (
        <div className="plain-scroll">
          <table className="plain outside-files">
            <thead>
              <tr>
                <th scope="col">{own.file}</th>
                <th scope="col">{own.revision}</th>
                <th scope="col">{own.kind}</th>
                <th scope="col" className="end">
                  {own.size}
                </th>
                <th scope="col">{own.state}</th>
                <th scope="col">{own.hash}</th>
                <th scope="col">{own.download}</th>
              </tr>
            </thead>
            <tbody>
              {detail.files.map((drawing) => (
                <FileRow
                  key={`${drawing.revision} ${drawing.file}`}
                  drawing={drawing}
                  isPresent={drawing.revision === detail.revision}
                  file={files === null ? null : files.get(drawing.file)}
                  remove={mayEdit ? () => remove(drawing) : null}
                  noteHash={mayEdit ? (sha256) => noteHash(drawing, sha256) : null}
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {detail.drawings === 0 && <p>{detail.revision === "" ? own.noRevision : own.empty(detail.revision)}</p>}
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}
        </p>
      )}
      {mayEdit && detail.revision !== "" && files !== null && (
        <Attach detail={detail} files={files} refresh={refresh} />
      )}
    </section>
  );
}

function FileRow({
  drawing,
  isPresent,
  file,
  remove,
  noteHash,
}: {
  readonly drawing: Drawing;
  readonly isPresent: boolean;
  /** Null: not known yet; undefined: it is not there. */
  readonly file: BookFile | null | undefined;
  readonly remove: (() => void) | null;
  readonly noteHash: ((sha256: string) => void) | null;
}) {
  const own = useWords().outside.files;
  const { bookId } = useDesk();
  const state = file === null ? "waiting" : fileState(drawing.sha256, file);
  const hash = drawing.sha256 || (file?.sha256 ?? "");
  const parts = { book: bookId, file: drawing.file };
  return (
    <tr className={isPresent ? undefined : "earlier"}>
      <th scope="row">
        {drawing.file}
        {drawing.remark !== "" && <small>{drawing.remark}</small>}
      </th>
      <td>
        {drawing.revision}
        <small>{isPresent ? own.now : own.earlier}</small>
      </td>
      <td>{own.kinds[drawing.kind]}</td>
      <td className="end">{file ? sizeText(file.bytes) : ""}</td>
      <td>
        <span className={state === "differs" || state === "missing" ? "error-text" : undefined}>
          {own.states[state]}
        </span>
        {state === "unhashed" && file && noteHash !== null && (
          <button type="button" className="link-button" onClick={() => noteHash(file.sha256)}>
            {own.keepHash}
          </button>
        )}
      </td>
      <td>
        {hash !== "" && (
          <details className="outside-hash">
            <summary>{hash.slice(0, 12)}…</summary>
            <code>{hash}</code>
          </details>
        )}
      </td>
      <td className="outside-actions">
        {file && (
          <a
            href={pathTo("bookFile", parts)}
            download={drawing.file}
            aria-label={own.downloadOf(drawing.file)}
          >
            <IconDownload size={16} /> {own.download}
          </a>
        )}
        {(state === "differs" || state === "missing") && drawing.sha256 !== "" && (
          <a href={pathTo("bookFile", parts, { sha256: drawing.sha256 })} download={drawing.file}>
            {own.downloadMeant}
          </a>
        )}
        {remove !== null && (
          <button
            type="button"
            className="link-button"
            aria-label={own.removeOf(drawing.file)}
            onClick={remove}
          >
            {own.remove}
          </button>
        )}
      </td>
    </tr>
  );
}

/** Where files are chosen or dropped: each is sent, then attached to the present revision with its hash. */
function Attach({
  detail,
  files,
  refresh,
}: {
  readonly detail: Detail;
  readonly files: ReadonlyMap<string, BookFile>;
  readonly refresh: () => Promise<void>;
}) {
  const words = useWords();
  const own = words.outside.files;
  const { bookId } = useDesk();
  const { status } = useSession();
  const trouble = useTrouble();
  const { edit, failed } = useEdit();
  const [over, setOver] = useState(false);
  const [busy, setBusy] = useState("");
  const [said, setSaid] = useState<readonly string[]>([]);
  const [problems, setProblems] = useState<readonly string[]>([]);
  const attach = async (sent: File, there: Map<string, BookFile>, mine: Set<string>): Promise<string> => {
    if (isTooLarge(sent)) throw new Error(own.problems.large(sent.name));
    const place = { partId: detail.id, revision: detail.revision, own: mine, files: there };
    const name = nameFor(sent.name, await hashOf(sent), place);
    const form = name === null ? null : drawingForm(name);
    if (name === null || form === null) throw new Error(own.problems.form(sent.name));
    const put = await call("putBookFile", {
      parts: { book: bookId, file: name },
      file: sent,
      token: status.token,
    }).catch((error: unknown) => {
      throw new Error(own.problems.failed(sent.name, trouble(error)));
    });
    there.set(name, put);
    mine.add(name);
    const key = { part: detail.id, revision: detail.revision, file: name };
    const rows = [{ table: "drawings", key, cells: { kind: KIND_OF_FORM[form], sha256: put.sha256 } }];
    await edit(own.notes.attached(name, detail.id, detail.revision), { kind: "put", rows });
    return name;
  };
  const take = async (list: readonly File[]): Promise<void> => {
    const there = new Map(files);
    const mine = new Set(
      detail.files.filter(({ revision }) => revision === detail.revision).map(({ file }) => file),
    );
    const good: string[] = [];
    const bad: string[] = [];
    for (const file of list) {
      setBusy(file.name);
      try {
        good.push(own.uploaded(await attach(file, there, mine)));
      } catch (error) {
        bad.push(error instanceof Error ? error.message : String(error));
      }
    }
    setBusy("");
    setSaid(good);
    setProblems(bad);
    await refresh();
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    void take([...event.dataTransfer.files]);
  };
  const wasSent = detail.sample.state !== "none";
  return (
    <section
      className="outside-drop"
      aria-label={own.upload(detail.revision)}
      data-over={over || undefined}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <FileButton multiple accept={ACCEPTED} onChange={(list) => void take(list)}>
        {(button) => (
          <Button {...button} variant="default" loading={busy !== ""} leftSection={<IconUpload size={16} />}>
            {own.upload(detail.revision)}
          </Button>
        )}
      </FileButton>
      <span className="dim">{own.drop}</span>
      {wasSent && <p className="amber-text">{own.sentOut(detail.revision)}</p>}
      <div role="status">
        {busy !== "" && <p className="dim">{own.uploading(busy)}</p>}
        {said.map((text) => (
          <p key={text}>{text}</p>
        ))}
      </div>
      {[...problems, ...(failed === "" ? [] : [failed])].map((text) => (
        <p key={text} className="error-text" role="alert">
          {text}
        </p>
      ))}
    </section>
  );
}
