import { Button, Modal, Table } from "@mantine/core";
import { useDesk, useRefused } from "../book/desk.tsx";
import { useTroubleOf } from "../trouble.ts";
import { useWords } from "../words.tsx";

/** Tells of a change that others had overtaken, with both texts, and lets the person put theirs in all the same. */
export function RefusedEdits() {
  const words = useWords().shell.refused;
  const { close } = useWords().common;
  const desk = useDesk();
  const [edit] = useRefused();
  const trouble = useTroubleOf();
  if (edit === undefined) return null;
  const cells = edit.conflicts.filter((conflict) => conflict.reason === "cell");
  const putMine = () => {
    void desk.edit(edit.note, { kind: "cells", cells });
    desk.forgetRefused(edit);
  };
  return (
    <Modal
      opened
      onClose={() => desk.forgetRefused(edit)}
      title={words.title}
      size="lg"
      closeButtonProps={{ "aria-label": close }}
    >
      <p>{edit.conflicts.length > 0 ? words.why(edit.note) : trouble(edit.code, edit.message)}</p>
      <Table>
        <Table.Tbody>
          {edit.conflicts.map((conflict) => (
            <Table.Tr key={`${conflict.table} ${conflict.row} ${conflict.column}`}>
              <Table.Td>{words.cell(`${conflict.table} · ${conflict.row} · ${conflict.column}`)}</Table.Td>
              <Table.Td>
                <span className="dim">{words.yours}</span> {conflict.to}
              </Table.Td>
              <Table.Td>
                <span className="dim">{words.theirs}</span>{" "}
                {conflict.reason === "row-gone"
                  ? words.rowGone
                  : conflict.reason === "row-used"
                    ? words.rowUsed
                    : conflict.found}
                {conflict.by !== undefined && <div className="dim">{words.by(conflict.by.personName)}</div>}
              </Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
      <div style={{ display: "flex", gap: 8, marginTop: 16, justifyContent: "flex-end" }}>
        {cells.length > 0 && (
          <Button variant="default" onClick={putMine}>
            {words.mine}
          </Button>
        )}
        <Button onClick={() => desk.forgetRefused(edit)}>{words.keep}</Button>
      </div>
    </Modal>
  );
}
