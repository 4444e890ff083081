/** What to take care of with paper and blades, by the id that a step names. */
export const CAUTIONS: Readonly<Record<string, string>> = {
  scissors: 'On paper this step never needs more than scissors; on the table nothing can cut you.',
  blade:
    'If you use a blade, cut away from your body, keep the holding hand behind it, and close a rotary cutter after every cut.',
  awl: 'Pierce with an awl or a pin onto a mat, never into your palm.',
  'school-rules': "Your school's own rules come first.",
};
