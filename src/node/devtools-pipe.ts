import type { Readable, Writable } from 'node:stream';

/** What an order to a browser says, and what it brings back. */
export type Content = Readonly<Record<string, unknown>>;

/** Orders to a browser by the Chrome DevTools Protocol, through the pipes of `--remote-debugging-pipe`: no port is opened. */
export interface DevtoolsPipe {
  /**
   * @param tab The session of a tab; left out, the browser itself is meant.
   * @throws Error when the browser refuses, or the pipe is broken.
   */
  send(method: string, content?: Content, tab?: string): Promise<Content>;
  /** Ends all waiting, for good. */
  break(reason: Error): void;
}

interface Waiting {
  resolve(answer: Content): void;
  reject(reason: Error): void;
}

/** What comes through the pipe; without `id` it is news that nobody asked for. */
interface Message {
  readonly id?: number;
  readonly result?: Content;
  readonly error?: { readonly message?: string };
}

/** Messages are JSON, each with a zero byte behind it. */
export function openDevtoolsPipe(orders: Writable, messages: Readable): DevtoolsPipe {
  const waiting = new Map<number, Waiting>();
  let count = 0;
  let broken: Error | undefined;

  const breakPipe = (reason: Error): void => {
    broken ??= reason;
    for (const { reject } of waiting.values()) reject(broken);
    waiting.clear();
  };

  const receive = ({ id, result, error }: Message): void => {
    if (id === undefined) return;
    const asked = waiting.get(id);
    waiting.delete(id);
    if (error === undefined) asked?.resolve(result ?? {});
    else asked?.reject(new Error(error.message));
  };

  readMessages(messages, receive, breakPipe);
  // A pipe breaks when the browser ends, and who has started it knows more of that.
  orders.on('error', () => undefined);
  messages.on('error', () => undefined);

  return {
    send: (method, params = {}, sessionId) =>
      new Promise((resolve, reject) => {
        if (broken !== undefined) {
          reject(broken);
          return;
        }
        count += 1;
        waiting.set(count, { resolve, reject });
        orders.write(`${JSON.stringify({ id: count, method, params, sessionId })}\0`);
      }),
    break: breakPipe,
  };
}

function readMessages(from: Readable, receive: (message: Message) => void, fail: (reason: Error) => void): void {
  // A printed page comes as one long message: its pieces are joined once.
  let pieces: string[] = [];
  from.setEncoding('utf8');
  from.on('data', (text: string) => {
    const [first = '', ...others] = text.split('\0');
    pieces.push(first);
    for (const next of others) {
      const whole = pieces.join('');
      pieces = [next];
      try {
        receive(JSON.parse(whole));
      } catch (cause) {
        fail(new Error('It answers in a form that is not known.', { cause }));
      }
    }
  });
}
