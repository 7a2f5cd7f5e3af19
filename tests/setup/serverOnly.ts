// Stands in for the 'server-only' marker package, which throws outside a React server build.
export {}
