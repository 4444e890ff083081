import fc from 'fast-check';

/**
 * Property tests start from one seed, so that a run that failed can be run again and a run that passed says the same
 * everywhere. `FC_SEED=<number>` looks elsewhere.
 */
fc.configureGlobal({ seed: Number(process.env['FC_SEED'] ?? 20261125) });
