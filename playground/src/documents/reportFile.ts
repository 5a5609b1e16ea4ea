import reportSheet from '../styles/report.css?inline';
import tokenSheet from '../styles/tokens.css?inline';
import { t } from '../words/t.ts';

/** The report as one page that needs nothing else: no script, no other file, and a policy that allows none.
 * @param paper what is shown of it in this page */
export function reportFile(title: string, paper: HTMLElement): string {
  const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
  const page = `body { max-width: 56rem; margin: 0 auto; padding: var(--gap-4); font: var(--text)/1.45 var(--sans); background: var(--paper); color: var(--ink); }`;
  return `<!doctype html>
<html lang="${t.code}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escaped(title)} – ${escaped(t.report.heading)}</title>
<style>
${tokenSheet}
${page}
${reportSheet}
</style>
</head>
<body>
<main>
${withoutComments(paper).outerHTML}
</main>
</body>
</html>
`;
}

/** A copy without the marks the page's framework leaves. */
function withoutComments(paper: HTMLElement): HTMLElement {
  const copy = paper.cloneNode(true) as HTMLElement;
  const walker = document.createTreeWalker(copy, NodeFilter.SHOW_COMMENT);
  const marks: Node[] = [];
  while (walker.nextNode()) marks.push(walker.currentNode);
  for (const mark of marks) mark.parentNode?.removeChild(mark);
  return copy;
}
