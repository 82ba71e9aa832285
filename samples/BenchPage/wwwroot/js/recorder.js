// Hands on what the microphone gives, as it is.
registerProcessor(
  'recorder',
  class extends AudioWorkletProcessor {
    process([[channel]]) {
      if (channel) this.port.postMessage(channel.slice());
      return true;
    }
  },
);
