/** How the fragment of an address begins that holds a shared case. */
export const shareMark = '#case=';
