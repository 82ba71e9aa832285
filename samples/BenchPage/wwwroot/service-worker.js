// While the page is being developed everything comes from the network.
self.addEventListener('fetch', () => {});
