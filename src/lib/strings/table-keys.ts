/** How the table is worked by keys: seen while a handle has the keyboard, and heard with the table. */
export const TABLE_KEYS =
  'Tab moves among the handles. Enter takes one up or chooses it; arrow keys move it by 1 mm at half scale, with Shift by 10, with Alt by a tenth; Enter puts it down, Escape lets it go, Delete takes it away. Plus, minus and 0 zoom; F6 leads to the panel and back, Ctrl+Z undoes.';
