// On a narrow screen the sections below the margins start closed.
export function narrow() { return matchMedia('(max-width: 700px)').matches; }
