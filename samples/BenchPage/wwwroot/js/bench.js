import { record, stopRecording } from './sound.js';

// What the page needs of the browser and .NET does not give: the worker, files, links, storage, printing.
const runtime = () => import.meta.resolve('../_framework/dotnet.js');

class Engine {
  constructor() {
    this.waiting = new Map();
    this.count = 0;
    this.worker = new Worker(new URL('./engine-worker.js', import.meta.url), { type: 'module' });
    this.started = new Promise((resolve, reject) => {
      this.worker.onmessage = ({ data }) => {
        if ('ready' in data) {
          if (data.ready) resolve();
          else reject(new Error(data.fault));
          return;
        }
        if ('progress' in data) {
          this.waiting.get(data.id)?.progress?.(data.progress);
          return;
        }
        const { resolve: answered, reject: failed } = this.waiting.get(data.id);
        this.waiting.delete(data.id);
        if ('fault' in data) failed(new Error(data.fault));
        else answered(data.answer);
      };
      this.worker.onerror = (event) => reject(new Error(event.message));
    });
    this.worker.postMessage({ runtime: runtime() });
  }

  stop() {
    this.worker.terminate();
    for (const { resolve } of this.waiting.values()) resolve(null);
    this.waiting.clear();
  }

  ask(verb, texts, progress) {
    return new Promise((resolve, reject) => {
      const id = ++this.count;
      this.waiting.set(id, { resolve, reject, progress });
      this.started.then(() => this.worker.postMessage({ id, verb, texts }), reject);
    });
  }
}

// When the first answers were there, for who measures the page.
export function mark(name) {
  if (performance.getEntriesByName(name).length === 0) performance.mark(name);
}

let engine;
let laborer;

export function ask(verb, ...texts) {
  engine ??= new Engine();
  return engine.ask(verb, texts);
}

// A question that takes too long ends with its worker: the next begins a new one. Every question that waits is answered with null.
export function stopAsking() {
  engine?.stop();
  engine = undefined;
}

// What takes seconds has a worker to itself, so that it can be stopped and nothing waits behind it.
export function work(verb, ...texts) {
  laborer ??= new Engine();
  return laborer.ask(verb, texts, (share) => watcher?.invokeMethodAsync('Progressed', share));
}

// Who is told how far that work is, and of links.
let watcher;

export function watch(other) {
  watcher = other;
}

export function stopAll() {
  stopRecording();
  laborer?.stop();
  laborer = undefined;
}

// Each sound is rendered in a worker of its own, so that two shapes take no longer than one.
const singers = new Set();

export async function preview(question) {
  const singer = new Engine();
  singers.add(singer);
  try {
    const text = await singer.ask('Preview', [question]);
    const answer = text && JSON.parse(text);
    if (!answer || answer.Error) return text;
    const sound = await singer.ask('Sound', []);
    answer.Address = URL.createObjectURL(new Blob([sound], { type: 'audio/wav' }));
    return JSON.stringify(answer);
  } finally {
    singer.stop();
    singers.delete(singer);
  }
}

export function stopPreviews() {
  for (const singer of singers) singer.stop();
}

export function forgetSound(address) {
  URL.revokeObjectURL(address);
}

export async function listenToFile(question) {
  const file = await chosen('.wav,audio/wav,audio/x-wav');
  return file && work('Listen', question, new Uint8Array(await file.arrayBuffer()));
}

// Where nothing can be recorded the answer says why, by the browser's name for it.
export async function listenToMicrophone(question, seconds) {
  try {
    const sound = await record(seconds);
    return sound && (await work('Listen', question, sound));
  } catch (fault) {
    const known = ['NotAllowedError', 'NotFoundError'];
    if (!(fault instanceof DOMException)) throw fault;
    return JSON.stringify({ Error: known.includes(fault.name) ? fault.name : 'other' });
  }
}

const place = 'bench';

export function drawingWidth() {
  return window.innerWidth < 700 ? Math.max(300, window.innerWidth - 24) : 560;
}

const packed = async (text) => {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  return btoa(String.fromCharCode(...bytes)).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
};

const unpacked = async (text) => {
  const bytes = Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (c) => c.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Response(stream).text();
};

// The bench in the link that the page was opened with. It is taken once, so that a reload keeps what was changed since.
async function linked() {
  if (!location.hash.startsWith('#tube=')) return null;
  const text = location.hash.slice('#tube='.length);
  history.replaceState(null, '', location.pathname);
  try {
    return await unpacked(text);
  } catch {
    return '{}';
  }
}

// A link that is opened where the bench is open already does not load the page again.
addEventListener('hashchange', async () => {
  const text = await linked();
  if (text !== null) await watcher?.invokeMethodAsync('OpenLink', text);
});

// A link wins over what was kept.
export async function kept() {
  const link = await linked();
  if (link !== null) return link;
  try {
    return localStorage.getItem(place);
  } catch {
    return null;
  }
}

export function keep(text) {
  try {
    localStorage.setItem(place, text);
  } catch {
    // Where the browser keeps nothing, files and links still do.
  }
}

export async function copyLink(text) {
  const link = `${location.origin}${location.pathname}#tube=${await packed(text)}`;
  try {
    await navigator.clipboard.writeText(link);
  } catch {
    history.replaceState(null, '', link);
  }
}

export function saveFile(name, text, type) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}

const chosen = (accept) =>
  new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.onchange = () => resolve(input.files[0] ?? null);
    input.oncancel = () => resolve(null);
    input.click();
  });

export async function openFile(accept) {
  const file = await chosen(accept);
  return file && file.text();
}

// The sheet in a frame of its own, so that its styles and the page's do not meet; it prints alone.
export function showSheet(html, print, close) {
  const dialog = document.createElement('dialog');
  dialog.className = 'sheet';
  const frame = document.createElement('iframe');
  frame.srcdoc = html;
  frame.title = print;
  const bar = document.createElement('div');
  bar.className = 'tools';
  const button = (text, action) => {
    const made = document.createElement('button');
    made.type = 'button';
    made.textContent = text;
    made.onclick = action;
    bar.append(made);
    return made;
  };
  button(print, () => frame.contentWindow.print()).className = 'main';
  button(close, () => dialog.close());
  dialog.append(bar, frame);
  dialog.onclose = () => dialog.remove();
  document.body.append(dialog);
  dialog.showModal();
}
