import type { HoleRecord } from '../shared/atlas/records.ts';
import type { Desk } from './store/desk.ts';
import { openDialog } from './store/dialogs.ts';
import { documentOfAtlas, type OpenAtlas } from './store/openAtlas.ts';
import { type Preferences, preferencesStore } from './store/preferences.ts';
import { sessionStore } from './store/session.ts';
import type { ShelfRow } from './library/database.ts';
import type { MenuGroup } from './ui/Menu.tsx';
import { holeWords } from './ui/words.ts';

/** Holes of the open atlas, the atlas's file, and the other atlases of the library. */
export function atlasMenu(
  desk: Desk,
  open: OpenAtlas | null,
  holes: readonly HoleRecord[],
  holeId: string | null,
  shelf: readonly ShelfRow[],
): readonly MenuGroup[] {
  const inFile = open !== null && open.inFile === documentOfAtlas(open);
  const others = shelf.filter(({ id }) => id !== open?.id);
  return [
    ...(holes.length === 0
      ? []
      : [
          {
            title: 'Hole',
            items: holes.map(({ id, label, name }) => ({
              key: id,
              label: holeWords(label, name),
              checked: id === holeId,
              run: () => sessionStore.setState({ holeId: id }),
            })),
          },
        ]),
    {
      title: 'Atlas',
      items: [
        { key: 'new', label: 'New', run: () => openDialog('new') },
        { key: 'library', label: 'All atlases', run: () => openDialog('library') },
        { key: 'holes', label: 'Holes and stations', run: () => openDialog('holes') },
        { key: 'layers', label: 'Under the drawing', run: () => openDialog('layers') },
        { key: 'place', label: 'Place on the earth', run: () => openDialog('place') },
        { key: 'open', label: 'Open a file', hint: 'Ctrl O', run: () => void desk.openFile() },
        {
          key: 'save',
          label:
            typeof open?.fileName === 'string' && open.fileHandle !== null
              ? `Save to ${open.fileName}`
              : 'Save to a file',
          hint: inFile ? 'no changes' : 'Ctrl S',
          run: () => void desk.save(),
        },
        { key: 'save-as', label: 'Save as', run: () => void desk.saveAs() },
        { key: 'sample', label: 'Open the sample course', run: () => void desk.openSample() },
      ],
    },
    {
      title: 'In and out',
      items: [
        { key: 'bring-in', label: 'Bring in a file', run: () => openDialog('bringIn') },
        { key: 'paste', label: 'Paste points', run: () => openDialog('pastePoints') },
        { key: 'level-book', label: 'Level book', run: () => openDialog('levelBook') },
        { key: 'plane-by-eye', label: 'Plane by eye', run: () => openDialog('planeByEye') },
        { key: 'send-out', label: 'Send out', run: () => openDialog('sendOut') },
      ],
    },
    ...(others.length === 0
      ? []
      : [
          {
            title: 'In the library',
            items: others.map(({ id, name, updatedAt }) => ({
              key: id,
              label: name,
              hint: new Date(updatedAt).toLocaleDateString(),
              run: () => void desk.openFromLibrary(id),
            })),
          },
        ]),
  ];
}

/** How it looks and reads. */
export function settingsMenu({ theme, textSize, units }: Preferences): readonly MenuGroup[] {
  const set = (change: Partial<Preferences>) => () => preferencesStore.setState(change);
  return [
    {
      title: 'Units',
      items: [
        {
          key: 'yards',
          label: 'Yards, feet and paces',
          checked: units === 'yards',
          run: set({ units: 'yards' }),
        },
        {
          key: 'metres',
          label: 'Metres and paces',
          checked: units === 'metres',
          run: set({ units: 'metres' }),
        },
      ],
    },
    {
      title: 'Theme',
      items: [
        { key: 'auto', label: 'As the system', checked: theme === 'auto', run: set({ theme: 'auto' }) },
        { key: 'light', label: 'Light', checked: theme === 'light', run: set({ theme: 'light' }) },
        { key: 'dark', label: 'Dark', checked: theme === 'dark', run: set({ theme: 'dark' }) },
      ],
    },
    {
      title: 'Text size',
      items: [
        { key: 'usual', label: 'Usual', checked: textSize === 'usual', run: set({ textSize: 'usual' }) },
        { key: 'large', label: 'Large', checked: textSize === 'large', run: set({ textSize: 'large' }) },
      ],
    },
  ];
}
