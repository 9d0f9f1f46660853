import { LIBRARY_ENTRIES } from "../../build/library-entries.mjs";

export default {
  name: "@feedpoint/core",
  entryPoints: Object.values(LIBRARY_ENTRIES).toSorted(),
  tsconfig: "../core/tsconfig.json",
  out: "dist",
  readme: "none",
  disableSources: true,
  excludeExternals: true,
  treatWarningsAsErrors: true,
  intentionallyNotExported: ["Interpolation", "ScalarInterpolation", "Explanation", "FINDING_KINDS"],
  validation: { invalidLink: true, notExported: true, notDocumented: true },
  requiredToBeDocumented: ["Variable", "Function", "Class", "Interface", "TypeAlias"],
  // `tsc --build` looks for errors of types; a second look takes twice as long as all the rest.
  skipErrorChecking: true,
};
