import { autocompletion, completionKeymap, type Completion, type CompletionContext, type CompletionResult } from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap, indentWithTab } from '@codemirror/commands';
import { yaml } from '@codemirror/lang-yaml';
import { bracketMatching, HighlightStyle, indentOnInput, indentUnit, syntaxHighlighting } from '@codemirror/language';
import { lintGutter, setDiagnostics, type Diagnostic } from '@codemirror/lint';
import { EditorState, type Extension } from '@codemirror/state';
import { drawSelection, EditorView, highlightActiveLine, highlightActiveLineGutter, keymap, lineNumbers } from '@codemirror/view';
import { tags } from '@lezer/highlight';

/** A finding as the editor shows it. Lines and columns count from 1. */
export interface Remark {
  readonly severity: 'error' | 'warning' | 'note';
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly problem: string;
  readonly remedy: string;
  readonly code: string;
}

/** What can be written in place of the text between `from` and `to`: one of the options. */
export interface Offered {
  readonly from: number;
  readonly to: number;
  readonly options: readonly Completion[];
}

export interface EditorOptions {
  readonly parent: HTMLElement;
  readonly text: string;
  readonly onChange: (text: string) => void;
  readonly onSave: () => void;
  readonly complete: (text: string, offset: number) => Offered | undefined;
}

export interface Editor {
  readonly text: () => string;
  readonly setText: (text: string) => void;
  readonly setRemarks: (remarks: readonly Remark[]) => void;
  /** Puts the cursor at the start of a line, shows it and gives the editor the focus. */
  readonly goTo: (line: number, column?: number) => void;
  /** Writes at the end, shows it and gives the editor the focus. */
  readonly append: (text: string) => void;
  readonly close: () => void;
}

const lettering: HighlightStyle = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: 'var(--act)', fontWeight: '500' },
  { tag: tags.comment, color: 'var(--ink2)', fontStyle: 'italic' },
  { tag: [tags.string, tags.special(tags.string)], color: 'var(--holds)' },
  { tag: [tags.typeName, tags.labelName], color: 'var(--curing)' },
  { tag: [tags.separator, tags.punctuation, tags.squareBracket, tags.brace], color: 'var(--ink2)' },
  { tag: tags.invalid, color: 'var(--exceeded)', textDecoration: 'underline wavy' },
]);

/** Everything but the colours stands in file.css; the editor's own sheet is only told not to paint. */
const paper = EditorView.theme({
  '&': { height: '100%', color: 'var(--ink)', backgroundColor: 'var(--sheet)', fontSize: 'var(--t1)' },
  '&.cm-focused': { outline: 'none' },
  '.cm-scroller': { fontFamily: 'var(--lettering-mono, "Recursive", ui-monospace, monospace)', lineHeight: '1.55' },
  '.cm-content': { caretColor: 'var(--ink)', paddingBlock: '8px' },
  '.cm-cursor': { borderLeft: '2px solid var(--ink)' },
  '.cm-gutters': { backgroundColor: 'var(--well)', color: 'var(--ink2)', borderRight: '1px solid var(--line)' },
  '.cm-activeLine, .cm-activeLineGutter': { backgroundColor: 'color-mix(in srgb, var(--well) 70%, transparent)' },
  '.cm-activeLineGutter': { color: 'var(--ink)', fontWeight: '600' },
  '&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground': { backgroundColor: 'color-mix(in srgb, var(--act) 24%, transparent)' },
  '.cm-matchingBracket, &.cm-focused .cm-matchingBracket': { backgroundColor: 'var(--mark)', color: 'var(--ink)' },
  '.cm-tooltip': { backgroundColor: 'var(--sheet)', color: 'var(--ink)', border: '2px solid var(--ink)', borderRadius: 'var(--r)', fontFamily: 'var(--text)', fontSize: 'var(--t0)' },
  '.cm-tooltip-autocomplete > ul > li': { padding: '4px 8px', minHeight: '24px' },
  '.cm-tooltip.cm-tooltip-autocomplete > ul': { fontFamily: 'var(--text)' },
  '.cm-tooltip-autocomplete > ul > li[aria-selected]': { backgroundColor: 'var(--ink)', color: 'var(--onink)' },
  '.cm-completionDetail': { color: 'inherit', fontStyle: 'normal', marginLeft: '12px' },
  '.cm-diagnostic': { padding: '8px 12px', borderLeft: 'none', maxWidth: '46ch' },
  '.cm-lintRange-error': { backgroundImage: 'none', textDecoration: 'underline wavy 2px var(--exceeded)', textUnderlineOffset: '3px' },
  '.cm-lintRange-warning': { backgroundImage: 'none', textDecoration: 'underline dashed 2px var(--tight)', textUnderlineOffset: '3px' },
  '.cm-lintRange-info': { backgroundImage: 'none', textDecoration: 'underline dotted 2px var(--unknown)', textUnderlineOffset: '3px' },
  '.cm-lint-marker': { width: '16px', height: '16px', content: 'none' },
});

const severities = { error: 'error', warning: 'warning', note: 'info' } as const;
const words = { error: 'Error', warning: 'Warning', note: 'Note' } as const;

/** Offset of a line and column in a document; both are held inside it, since a remark may be a keystroke older than the text. */
function offsetOf(state: EditorState, line: number, column: number): number {
  const at = state.doc.line(Math.min(Math.max(line, 1), state.doc.lines));
  return Math.min(at.from + Math.max(column - 1, 0), at.to);
}

function diagnosticOf(state: EditorState, remark: Remark): Diagnostic {
  const from = offsetOf(state, remark.line, remark.column);
  const to = Math.max(from, offsetOf(state, remark.endLine, remark.endColumn));
  return { from, to, severity: severities[remark.severity], message: `${words[remark.severity]}: ${remark.problem} ${remark.remedy}`.trim(), source: remark.code };
}

function completionSource(complete: EditorOptions['complete']) {
  return (context: CompletionContext): CompletionResult | null => {
    const offered = complete(context.state.doc.toString(), context.pos);
    if (!offered || offered.options.length === 0) return null;
    if (!context.explicit && offered.from === context.pos && !/[\s:[{,]$/.test(context.state.sliceDoc(Math.max(0, context.pos - 1), context.pos))) return null;
    return { from: offered.from, to: offered.to, options: offered.options, validFor: /^[\w./*-]*$/ };
  };
}

/**
 * A text editor for machine files: YAML, findings in place, completion. Tab indents; Escape, then Tab, leaves.
 * The caller owns what is shown around it and closes it.
 */
export function openEditor({ parent, text, onChange, onSave, complete }: EditorOptions): Editor {
  const extensions: Extension = [
    lineNumbers(), highlightActiveLine(), highlightActiveLineGutter(), drawSelection(), history(), indentOnInput(), bracketMatching(), lintGutter(),
    indentUnit.of('  '), yaml(), syntaxHighlighting(lettering), paper, autocompletion({ override: [completionSource(complete)], icons: false }),
    EditorView.cspNonce.of(document.querySelector<HTMLMetaElement>('meta[property="csp-nonce"]')?.nonce ?? ''),
    keymap.of([{ key: 'Mod-s', preventDefault: true, run: () => { onSave(); return true; } }, ...completionKeymap, ...defaultKeymap, ...historyKeymap, indentWithTab]),
    EditorView.contentAttributes.of({ 'aria-label': 'Machine file', 'aria-describedby': 'file-keys', spellcheck: 'false', autocapitalize: 'off', tabindex: '0' }),
    EditorView.updateListener.of((update) => { if (update.docChanged) onChange(update.state.doc.toString()); }),
  ];
  const view = new EditorView({ parent, state: EditorState.create({ doc: text, extensions }) });
  return {
    text: () => view.state.doc.toString(),
    setText: (next) => view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: next } }),
    setRemarks: (remarks) => view.dispatch(setDiagnostics(view.state, remarks.map((remark) => diagnosticOf(view.state, remark)))),
    goTo: (line, column = 1) => {
      const at = offsetOf(view.state, line, column);
      view.dispatch({ selection: { anchor: at }, effects: EditorView.scrollIntoView(at, { y: 'center' }) });
      view.focus();
    },
    append: (text) => {
      const { length } = view.state.doc;
      view.dispatch({ changes: { from: length, insert: text }, selection: { anchor: length + text.length }, effects: EditorView.scrollIntoView(length, { y: 'center' }), userEvent: 'input' });
      view.focus();
    },
    close: () => view.destroy(),
  };
}
