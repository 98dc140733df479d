import type { Element, ElementContent, Root as HtmlRoot, RootContent as HtmlRootContent } from 'hast';
import { h } from 'hastscript';
import type { Definition, Image, ListItem, Paragraph, Parents, Root, RootContent } from 'mdast';
import type { Directives } from 'mdast-util-directive';
import rehypeSanitize from 'rehype-sanitize';
import remarkRehype, { defaultHandlers, type Options } from 'remark-rehype';
import { unified } from 'unified';
import { VFile } from 'vfile';
import { LESSON_SCHEMA, SLOT_TAG } from './sanitize-schema.ts';

/** What `renderMarkdown` is told. */
export interface RenderOptions {
  /**
   * The trusted content that stands for a directive. `children` is the text between the fences of a container,
   * rendered, with its own directives already filled in; empty for the other forms.
   */
  slot(directive: Directives, children: ElementContent[]): ElementContent[];
  /**
   * `false`: every box of a task list is empty, whatever the author ticked. Else ticked boxes show as ticked, and
   * `label` says so in words for those who do not see them.
   */
  readonly tickTaskLists: false | { readonly label: string };
  /** Gives a link of the author's as the page shows it, after cleaning; absent, links stay as they are. */
  markLink?(link: Element): Element;
  /** Added to the level of every heading, which never goes beyond 6; 0 when absent. */
  readonly headingShift?: number;
  /** Link reference definitions of the whole lesson, when `nodes` is only a part of it. */
  readonly definitions?: readonly Definition[];
}

type Handlers = NonNullable<Options['handlers']>;
type State = Parameters<NonNullable<Handlers['listItem']>>[0];

/** Gives the content of one slot, from what its placeholder holds after cleaning. */
type Fill = (children: ElementContent[]) => ElementContent[];

interface Job {
  readonly options: RenderOptions;
  readonly fills: Fill[];
}

declare module 'vfile' {
  interface DataMap {
    renderJob: Job;
  }
}

/**
 * Renders Markdown nodes to a tree that is safe to put in a page. The author's tree is cleaned first; only then are
 * directives and task-list boxes put in, so nothing trusted passes the cleaning and nothing written by hand escapes
 * it. Raw HTML is left out. The given nodes are not changed.
 */
export function renderMarkdown(nodes: readonly RootContent[], options: RenderOptions): ElementContent[] {
  const root: Root = { type: 'root', children: [...(options.definitions ?? []), ...nodes] };
  const job: Job = { options, fills: [] };
  const file = new VFile();
  file.data.renderJob = job;
  const tree: HtmlRoot = RENDERER.runSync(root, file);
  return fillSlots(tree.children, job);
}

const handlers: Handlers = {
  containerDirective: (state: State, node: Directives) => renderDirective(state, node),
  leafDirective: (state: State, node: Directives) => renderDirective(state, node),
  textDirective: (state: State, node: Directives) => renderDirective(state, node),
  listItem: renderListItem,
  heading: (state, node) => {
    const depth = node.depth + (requireJob(state).options.headingShift ?? 0);
    return defaultHandlers.heading(state, { ...node, depth: Math.min(6, depth) });
  },
  image: (state, node) => (isRemote(node.url) ? renderAlternative(node) : defaultHandlers.image(state, node)),
  imageReference: (state, node) => {
    const definition = state.definitionById.get(String(node.identifier).toUpperCase());
    const remote = definition !== undefined && isRemote(definition.url);
    return remote ? renderAlternative(node) : defaultHandlers.imageReference(state, node);
  },
};

const RENDERER = unified().use(remarkRehype, { handlers }).use(rehypeSanitize, LESSON_SCHEMA).freeze();

function requireJob(state: State): Job {
  const job = state.options.file?.data.renderJob;
  if (job === undefined) throw new Error('Markdown is rendered by renderMarkdown only');
  return job;
}

function addSlot(job: Job, children: ElementContent[], fill: Fill): Element {
  job.fills.push(fill);
  return { type: 'element', tagName: SLOT_TAG, properties: { value: String(job.fills.length - 1) }, children };
}

function renderDirective(state: State, node: Directives): Element {
  const job = requireJob(state);
  const children = node.type === 'containerDirective' ? renderBetweenFences(state, node) : [];
  return addSlot(job, children, (filled) => job.options.slot(node, filled));
}

function renderBetweenFences(
  state: State,
  node: Extract<Directives, { type: 'containerDirective' }>,
): ElementContent[] {
  const children = node.children.filter((child) => !(child.type === 'paragraph' && isLabel(child)));
  return state.wrap(state.all({ ...node, children }), true);
}

function isLabel(node: Paragraph): boolean {
  return node.data?.directiveLabel === true;
}

/** A task is rendered as a plain item, its state cleared first; the box put before its text alone may show the state. */
function renderListItem(state: State, node: ListItem, parent: Parents | undefined): Element {
  const item = defaultHandlers.listItem(state, { ...node, checked: null }, parent);
  if (typeof node.checked !== 'boolean') return item;
  const job = requireJob(state);
  const { tickTaskLists } = job.options;
  const ticked = tickTaskLists !== false && node.checked ? tickTaskLists.label : undefined;
  // In a loose list the text stands in a paragraph, after a line ending.
  const [head, second] = item.children;
  const loose = head?.type === 'text' && head.value === '\n' && second?.type === 'element' && second.tagName === 'p';
  const holder = loose ? second : item;
  holder.children.unshift(
    addSlot(job, [], () => [renderBox(ticked)]),
    { type: 'text', value: ' ' },
  );
  item.properties['className'] = ['task'];
  return item;
}

function renderBox(ticked: string | undefined): Element {
  return ticked === undefined
    ? h('span.box', { ariaHidden: 'true' })
    : h('span.box.ticked', { role: 'img', ariaLabel: ticked });
}

/** A picture that is not in the pack: with a protocol, or of another host. */
function isRemote(url: string): boolean {
  return /^(?:[a-z][a-z0-9+.-]*:|\/\/)/i.test(url);
}

function renderAlternative({ alt }: Pick<Image, 'alt'>): ElementContent {
  return { type: 'text', value: alt ?? '' };
}

/** Puts the trusted content in the cleaned tree, from the inside out, and says alignment the way the standard does now. */
function fillSlots(nodes: readonly HtmlRootContent[], job: Job): ElementContent[] {
  const filled: ElementContent[] = [];
  for (const node of nodes) {
    if (node.type === 'doctype') continue;
    if (node.type !== 'element') {
      filled.push(node);
      continue;
    }
    const children = fillSlots(node.children, job);
    if (node.tagName === SLOT_TAG) {
      filled.push(...requireFill(node, job.fills)(children));
      continue;
    }
    const { align, ...properties } = node.properties;
    if (align !== undefined) properties['className'] = [`align-${align}`];
    const element = { ...node, properties, children };
    filled.push(node.tagName === 'a' ? (job.options.markLink?.(element) ?? element) : element);
  }
  return filled;
}

function requireFill(slot: Element, fills: readonly Fill[]): Fill {
  const fill = fills[Number(slot.properties['value'])];
  if (fill === undefined) throw new Error('A slot without content');
  return fill;
}
