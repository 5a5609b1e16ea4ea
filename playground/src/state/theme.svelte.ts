/** Light, dark, or as the device says. */
export type ThemeName = 'auto' | 'light' | 'dark';

/** The chosen theme; `next` goes round the three. */
export interface Theme {
  readonly name: ThemeName;
  next(): void;
}

const key = 'faultodds-theme';
const order: readonly ThemeName[] = ['auto', 'light', 'dark'];

/** Reads the choice kept on this device and puts it on the page. A device that keeps nothing gets `auto`. */
export function createTheme(root: HTMLElement): Theme {
  let name = $state<ThemeName>(kept());
  apply();
  return {
    get name() {
      return name;
    },
    next() {
      name = order[(order.indexOf(name) + 1) % order.length] ?? 'auto';
      apply();
      try {
        localStorage.setItem(key, name);
      } catch {
        // storage is refused: the choice lasts as long as the page
      }
    },
  };

  function apply(): void {
    if (name === 'auto') delete root.dataset['theme'];
    else root.dataset['theme'] = name;
  }
  function kept(): ThemeName {
    try {
      return order.find((one) => one === localStorage.getItem(key)) ?? 'auto';
    } catch {
      return 'auto';
    }
  }
}
