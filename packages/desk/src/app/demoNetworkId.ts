/** The demo's network, by which its ledger is known from a real one. */
export const demoNetworkId = 'demo'
