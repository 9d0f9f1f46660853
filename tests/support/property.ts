import fc from "fast-check";

/**
 * fast-check with a fixed seed, so that a run can be repeated and a failure is no matter of luck. Another seed looks at
 * other examples: FEEDPOINT_TEST_SEED=7 vitest run tests/property
 */
fc.configureGlobal({ seed: Number(process.env.FEEDPOINT_TEST_SEED ?? 20_261_124) });

export { fc };
