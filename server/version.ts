/** Version of the program: kept with every answer, printed by the command line. */
export const PROGRAM = '0.4.0';
