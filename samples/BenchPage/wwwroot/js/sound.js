// The microphone as a WAV file: mono, 32 bits, nothing filtered out of it, nothing compressed.
let stop = () => {};

export function stopRecording() {
  stop();
}

export async function record(seconds) {
  if (!navigator.mediaDevices) throw new DOMException('', 'NotFoundError');
  let isStopped = false;
  stop = () => (isStopped = true);
  const stream = await navigator.mediaDevices.getUserMedia({
    audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 },
  });
  const context = new AudioContext();
  try {
    await context.audioWorklet.addModule(new URL('./recorder.js', import.meta.url));
    const recorder = new AudioWorkletNode(context, 'recorder');
    context.createMediaStreamSource(stream).connect(recorder);
    const wanted = seconds * context.sampleRate;
    const blocks = [];
    let count = 0;
    await new Promise((resolve) => {
      stop = () => {
        isStopped = true;
        resolve();
      };
      if (isStopped) resolve();
      recorder.port.onmessage = ({ data }) => {
        blocks.push(data);
        count += data.length;
        if (count >= wanted) resolve();
      };
    });
    return isStopped ? null : wave(blocks, count, context.sampleRate);
  } finally {
    stream.getTracks().forEach((track) => track.stop());
    await context.close();
    stop = () => {};
  }
}

function wave(blocks, count, rate) {
  const bytes = new Uint8Array(44 + 4 * count);
  const view = new DataView(bytes.buffer);
  const text = (at, letters) => [...letters].forEach((letter, i) => view.setUint8(at + i, letter.charCodeAt(0)));
  text(0, 'RIFF');
  view.setUint32(4, 36 + 4 * count, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 3, true); // floats
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, 4 * rate, true);
  view.setUint16(32, 4, true);
  view.setUint16(34, 32, true);
  text(36, 'data');
  view.setUint32(40, 4 * count, true);
  let at = 44;
  for (const block of blocks) {
    for (const sample of block) {
      view.setFloat32(at, sample, true);
      at += 4;
    }
  }
  return bytes;
}
