/** Above what is typed, where an exercise is measured on half-scale paper. */
export const HALF_TYPED = 'Lengths are typed as they are on the half-scale paper.';
