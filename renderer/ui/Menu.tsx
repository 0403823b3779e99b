import { useEffect, useId, useLayoutEffect, useRef, useState } from 'react';

export interface MenuItem {
  readonly key: string;
  readonly label: string;
  readonly hint?: string;
  readonly checked?: boolean;
  readonly disabled?: boolean;
  readonly run: () => void;
}

export interface MenuGroup {
  readonly title: string;
  readonly items: readonly MenuItem[];
}

interface MenuProps {
  readonly button: React.ReactNode;
  /** Name of the button where its contents do not say it. */
  readonly name?: string;
  readonly className: string;
  readonly align?: 'start' | 'end';
  readonly groups: readonly MenuGroup[];
}

/** A button with a menu: arrows, Home and End walk it, Escape closes it and gives the button its focus back. */
export function Menu({ button, name, className, align = 'start', groups }: MenuProps): React.JSX.Element {
  const [open, setOpen] = useState(false);
  const id = useId();
  const root = useRef<HTMLDivElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const sheet = useRef<HTMLDivElement>(null);

  const items = (): readonly HTMLElement[] => [
    ...(root.current?.querySelectorAll<HTMLElement>('[role^=menuitem]:not([aria-disabled=true])') ?? []),
  ];
  const close = (refocus: boolean): void => {
    setOpen(false);
    if (refocus) opener.current?.focus();
  };

  useLayoutEffect(() => {
    if (sheet.current === null || opener.current === null) return;
    // Near the foot of the window a menu opens upward, as far as there is room for it.
    const { bottom, height } = sheet.current.getBoundingClientRect();
    const roomAbove = opener.current.getBoundingClientRect().top;
    if (bottom > window.innerHeight && height < roomAbove) sheet.current.classList.add('up');
  }, [open]);
  useEffect(() => {
    if (!open) return undefined;
    (items().find((item) => item.getAttribute('aria-checked') === 'true') ?? items()[0])?.focus();
    const outside = (event: PointerEvent): void => {
      if (event.target instanceof Node && root.current?.contains(event.target) !== true) setOpen(false);
    };
    document.addEventListener('pointerdown', outside);
    return () => document.removeEventListener('pointerdown', outside);
  }, [open]);

  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (!open) return;
    event.stopPropagation();
    const all = items();
    const at = all.findIndex((item) => item === document.activeElement);
    const go = (index: number): void => {
      event.preventDefault();
      all[(index + all.length) % all.length]?.focus();
    };
    if (event.key === 'ArrowDown') go(at + 1);
    else if (event.key === 'ArrowUp') go(at - 1);
    else if (event.key === 'Home') go(0);
    else if (event.key === 'End') go(-1);
    else if (event.key === 'Escape') close(true);
    else if (event.key === 'Tab') close(false);
  };

  return (
    <div className="menu" ref={root} onKeyDown={onKeyDown}>
      <button
        ref={opener}
        type="button"
        className={className}
        aria-haspopup="menu"
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        aria-label={name}
        title={name}
        onClick={() => setOpen(!open)}
      >
        {button}
      </button>
      {open && (
        <div className={`menu-sheet ${align}`} ref={sheet} role="menu" id={id} aria-label={name ?? 'Menu'}>
          {groups.map((group, g) => (
            <div role="group" aria-label={group.title} className="menu-group" key={group.title}>
              <div className="menu-title" aria-hidden>
                {group.title}
              </div>
              {group.items.map((item, i) => (
                <button
                  key={item.key}
                  type="button"
                  role={item.checked === undefined ? 'menuitem' : 'menuitemradio'}
                  aria-checked={item.checked}
                  aria-disabled={item.disabled === true}
                  // One in the Tab order, so that a menu taller than the window can be scrolled by keyboard.
                  tabIndex={g === 0 && i === 0 ? 0 : -1}
                  className="menu-item"
                  onClick={() => {
                    if (item.disabled === true) return;
                    close(true);
                    item.run();
                  }}
                >
                  <span className="menu-mark" aria-hidden>
                    {item.checked === true ? '•' : ''}
                  </span>
                  <span>{item.label}</span>
                  {item.hint !== undefined && <span className="menu-hint">{item.hint}</span>}
                </button>
              ))}
            </div>
          ))}
        </div>
      )}
    </div>
  );
}
