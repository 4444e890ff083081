import { expect, type Page } from '@playwright/test';
import type { Typed } from './typed.ts';

/** What is looked for on the page: by CSS, and among several by the words it shows. */
export interface Aim {
  readonly css: string;
  readonly text?: string;
}

/** How often Tab may be pressed on the way to something; a page with more stops than this is no use by keys. */
const FAR = 250;

/** Someone who works by keys alone. The page is only looked at; nothing but key presses changes it. */
export class Keys {
  readonly page: Page;
  constructor(page: Page) {
    this.page = page;
  }

  async press(key: string, times = 1): Promise<void> {
    for (let i = 0; i < times; i += 1) await this.page.keyboard.press(key);
  }

  /** Tabs, forwards or backwards, until it has the keyboard. */
  async to(css: string, text?: string): Promise<void> {
    const aim: Aim = { css, ...(text === undefined ? {} : { text }) };
    for (let i = 0; i < FAR; i += 1) {
      const where = await this.page.evaluate(whereFrom, aim);
      if (where === 'here') return;
      // What is shown only when it is asked for may still be on its way.
      if (where === 'missing') await this.page.waitForTimeout(50);
      else await this.press(where === 'before' ? 'Shift+Tab' : 'Tab');
    }
    throw new Error(`Tab does not lead to ${css}${text === undefined ? '' : ` "${text}"`}.`);
  }

  async button(name: string): Promise<void> {
    await this.to('button', name);
    await this.press('Enter');
  }
  async unfold(summary: string): Promise<void> {
    await this.to('summary', summary);
    const open = () =>
      this.page.evaluate(() => (document.activeElement?.parentElement as HTMLDetailsElement).open);
    if (!(await open())) await this.press('Enter');
    expect(await open()).toBe(true);
  }
  /** Takes the tool with this name in hand: arrows among the radio buttons. */
  async take(tool: string): Promise<void> {
    await this.to('.tools input:checked');
    for (let i = 0; i < 12; i += 1) {
      if ((await this.page.locator('.tools .held').textContent())?.trim() === tool) return;
      await this.press('ArrowDown');
    }
    throw new Error(`There is no tool "${tool}".`);
  }

  /** Goes to a handle of the table; `Enter` then takes it up or chooses it. */
  async handle(id: string): Promise<void> {
    await this.to(`[data-target="${id}"]`);
  }
  async pick(id: string): Promise<void> {
    await this.handle(id);
    await this.press('Enter');
  }
  /** What a handle says of itself. */
  async words(id: string): Promise<string> {
    return (await this.page.locator(`[data-target="${id}"]`).getAttribute('aria-label')) ?? '';
  }
  async act(id: string): Promise<void> {
    await this.to(`[data-act="${id}"]`);
    await this.press('Enter');
  }

  /** Sets a select box by arrow keys. */
  async select(css: string, value: string): Promise<void> {
    await this.to(css);
    const by = await this.page.evaluate((wanted) => {
      const box = document.activeElement as HTMLSelectElement;
      return [...box.options].findIndex((option) => option.value === wanted) - box.selectedIndex;
    }, value);
    await this.press(by < 0 ? 'ArrowUp' : 'ArrowDown', Math.abs(by));
    expect(await this.page.locator(css).inputValue()).toBe(value);
  }
  /** Types into a box, over what stands in it. */
  async type(css: string, value: string): Promise<void> {
    await this.to(css);
    await this.press('Control+a');
    await this.page.keyboard.type(value);
  }

  /** Fills a form of "By typed values" and sends it with Enter. */
  async give({ form, values }: Typed): Promise<void> {
    const box = `form[data-form="${form}"]`;
    for (const [id, value] of Object.entries(values)) {
      const css = `${box} [id="${form}-${id}"]`;
      if (typeof value === 'boolean') {
        await this.to(css);
        const checked = await this.page.locator(css).isChecked();
        if (checked !== value) await this.press('Space');
      } else if ((await this.page.locator(css).evaluate((one) => one.tagName)) === 'SELECT')
        await this.select(css, value);
      else await this.type(css, value);
    }
    await this.to(`${box} button`);
    await this.press('Enter');
  }
}

/** Where something lies from what has the keyboard. Runs in the page and only looks. */
function whereFrom({ css, text }: Aim): 'here' | 'before' | 'after' | 'missing' {
  const found = [...document.querySelectorAll(css)].find(
    (one) => text === undefined || one.textContent?.trim() === text,
  );
  const now = document.activeElement;
  if (!found || !now) return 'missing';
  if (found === now) return 'here';
  return now.compareDocumentPosition(found) & Node.DOCUMENT_POSITION_PRECEDING ? 'before' : 'after';
}

/** A place as the table tells it: "95 mm to the wearer’s right of centre front, 12 mm above the bust line"; x and y in mm. */
export function placeIn(words: string): { x: number; y: number } {
  const across = /([\d.]+) mm to the wearer’s (right|left)/.exec(words);
  const height = /([\d.]+) mm (above|below) the bust line/.exec(words);
  if ((!across && !words.includes('on centre front')) || (!height && !words.includes('on the bust line')))
    throw new Error(`No place is told in: ${words}`);
  return {
    x: across ? Number(across[1]) * (across[2] === 'right' ? -1 : 1) : 0,
    y: height ? Number(height[1]) * (height[2] === 'above' ? -1 : 1) : 0,
  };
}
