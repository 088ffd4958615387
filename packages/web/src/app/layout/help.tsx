import { Modal } from "@mantine/core";
import { useWords } from "../words.tsx";

/** All keys and gestures of the drawing. */
export function Help({ close }: { readonly close: () => void }) {
  const words = useWords();
  return (
    <Modal opened onClose={close} title={words.layout.help.title} size="lg">
      <table className="help-keys">
        <tbody>
          {words.layout.help.rows.map(([keys, meaning]) => (
            <tr key={keys}>
              <th scope="row">{keys}</th>
              <td>{meaning}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Modal>
  );
}
