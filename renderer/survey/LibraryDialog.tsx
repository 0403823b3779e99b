import { useEffect, useState } from 'react';
import type { ShelfRow } from '../library/database.ts';
import type { Desk } from '../store/desk.ts';
import { Dialog } from '../ui/Dialog.tsx';
import { Thumbnail } from './Thumbnail.tsx';

interface LibraryDialogProps {
  readonly desk: Desk;
  readonly openId: string | null;
  readonly close: () => void;
}

/** Every atlas kept here: found, opened, named, copied, and taken away with a way back. */
export function LibraryDialog({ desk, openId, close }: LibraryDialogProps): React.JSX.Element {
  const [rows, setRows] = useState<readonly ShelfRow[]>([]);
  const [search, setSearch] = useState('');
  const [naming, setNaming] = useState<{ readonly id: string; readonly name: string } | null>(null);
  const [taken, setTaken] = useState<{ readonly name: string; readonly back: () => Promise<void> } | null>(
    null,
  );
  const [changes, setChanges] = useState(0);
  useEffect(() => {
    let wanted = true;
    desk
      .settled()
      .then(
        () => desk.atlases(),
        () => desk.atlases(),
      )
      .then(
        (list) => {
          if (wanted) setRows(list);
        },
        () => undefined,
      );
    return () => {
      wanted = false;
    };
  }, [desk, changes, openId]);
  const after = (work: Promise<unknown>): void => {
    work.then(
      () => setChanges((count) => count + 1),
      () => undefined,
    );
  };
  const found = rows.filter(({ name }) => name.toLowerCase().includes(search.trim().toLowerCase()));
  return (
    <Dialog title="All atlases" close={close}>
      <div className="field">
        <label htmlFor="library-search">Find</label>
        <input
          id="library-search"
          type="search"
          value={search}
          onChange={({ target }) => setSearch(target.value)}
        />
      </div>
      {taken !== null && (
        <p className="dialog-note" role="status">
          Took “{taken.name}” away.{' '}
          <button
            type="button"
            className="link-button"
            onClick={() => {
              after(taken.back());
              setTaken(null);
            }}
          >
            Put it back
          </button>
        </p>
      )}
      <ul className="shelf">
        {found.map(({ id, name, updatedAt, fileName }) => (
          <li key={id} aria-current={id === openId}>
            <Thumbnail {...{ desk, id, updatedAt }} />
            {naming?.id === id ? (
              <form
                onSubmit={(event) => {
                  event.preventDefault();
                  const wanted = naming.name.trim();
                  setNaming(null);
                  if (wanted !== '' && wanted !== name) after(desk.rename(id, wanted));
                }}
              >
                <input
                  type="text"
                  aria-label={`New name of ${name}`}
                  maxLength={200}
                  value={naming.name}
                  autoFocus
                  onChange={({ target }) => setNaming({ id, name: target.value })}
                />
                <button type="submit" className="link-button">
                  Name it
                </button>
              </form>
            ) : (
              <>
                <button
                  type="button"
                  className="shelf-open"
                  onClick={() => {
                    void desk.openFromLibrary(id);
                    close();
                  }}
                >
                  <strong>{name}</strong>
                  <span>
                    {id === openId
                      ? 'open now'
                      : new Date(updatedAt).toLocaleString(undefined, {
                          dateStyle: 'medium',
                          timeStyle: 'short',
                        })}
                    {fileName === null ? '' : `, file ${fileName}`}
                  </span>
                </button>
                <span className="shelf-actions">
                  <button
                    type="button"
                    className="link-button"
                    aria-label={`Rename ${name}`}
                    onClick={() => setNaming({ id, name })}
                  >
                    Rename
                  </button>
                  <button
                    type="button"
                    className="link-button"
                    aria-label={`Copy ${name}`}
                    onClick={() => after(desk.duplicate(id))}
                  >
                    Copy
                  </button>
                  <button
                    type="button"
                    className="link-button"
                    aria-label={`Take ${name} away`}
                    onClick={() =>
                      after(
                        desk.remove(id).then((back) => {
                          if (back !== null) setTaken({ name, back });
                        }),
                      )
                    }
                  >
                    Take away
                  </button>
                </span>
              </>
            )}
          </li>
        ))}
      </ul>
      {found.length === 0 && (
        <p className="dialog-note">
          {rows.length === 0 ? 'Nothing is kept here yet.' : 'No atlas has that in its name.'}
        </p>
      )}
    </Dialog>
  );
}
