/** The version of the command, as package.json has it. */
export const VERSION = "0.1.0";
