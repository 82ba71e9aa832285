// The engine, in a worker of its own: the page sends {id, verb, text} and gets {id, answer} or {id, fault}.
// The runtime takes a worker for one of its own threads unless this is set; this one has a runtime to itself.
globalThis.dotnetSidecar = true;

let exports;
let current;

// What computes says how far it is; messages go out at once, though none comes in before it has ended.
globalThis.reportProgress = (share) => postMessage({ id: current, progress: share });

onmessage = async ({ data }) => {
  if (data.runtime) {
    try {
      const { dotnet } = await import(data.runtime);
      const { getAssemblyExports, getConfig } = await dotnet.create();
      exports = (await getAssemblyExports(getConfig().mainAssemblyName)).BenchPage.Engine.Worker;
      postMessage({ ready: true });
    } catch (fault) {
      postMessage({ ready: false, fault: String(fault) });
    }
    return;
  }
  try {
    current = data.id;
    postMessage({ id: data.id, answer: exports[data.verb](...data.texts) });
  } catch (fault) {
    postMessage({ id: data.id, fault: String(fault) });
  }
};
