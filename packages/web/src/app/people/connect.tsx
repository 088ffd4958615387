import { useSession } from "../session/session.tsx";
import { useWords } from "../words.tsx";

/** How a tablet or another computer reaches this server: first the page that helps it trust us, then the app. */
export function Connect() {
  const words = useWords().people.connect;
  const { status } = useSession();
  return (
    <section>
      <h3>{words.title}</h3>
      {!status.accounts ? (
        <p>{words.before}</p>
      ) : status.addresses.length === 0 ? (
        <p>{words.noAddress}</p>
      ) : (
        <>
          <ol>
            {words.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          {status.addresses.map((address) => (
            <dl className="addresses" key={address}>
              <dt>{words.trust}</dt>
              <dd>
                <Address address={address.replace(/^https:/u, "http:")} />
              </dd>
              <dt>{words.app}</dt>
              <dd>
                <Address address={address} />
              </dd>
            </dl>
          ))}
        </>
      )}
    </section>
  );
}

function Address({ address }: { readonly address: string }) {
  return (
    <a href={address} target="_blank" rel="noreferrer">
      {address}
    </a>
  );
}
