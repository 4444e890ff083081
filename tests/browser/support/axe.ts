import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

/*
 * Outside source: axe-core's rules for WCAG 2.0, 2.1 and 2.2, levels A and AA (read: the tags of the installed version).
 */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** The page as it stands breaks no rule, and axe did look at it; `where` names it in the list of failures. */
export async function expectNoViolation(page: Page, where: string): Promise<void> {
  const { violations, passes } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  const found = violations.map(({ id, nodes }) => ({
    id,
    at: nodes.slice(0, 5).map(({ target, failureSummary }) => `${target.join(' ')}: ${failureSummary}`),
  }));
  expect.soft(found, where).toEqual([]);
  expect(passes.length, where).toBeGreaterThan(5);
}
