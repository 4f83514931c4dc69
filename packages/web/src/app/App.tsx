import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { Route, Switch } from 'wouter'
import { ProblemError } from '../api/problemError.ts'
import { GaugesScreen } from './GaugesScreen.tsx'
import { SettingsScreen } from './SettingsScreen.tsx'
import { TodayScreen } from './TodayScreen.tsx'

/** The desk is on this computer: it is asked even when the browser believes to be offline. */
const client = new QueryClient({
  defaultOptions: {
    queries: {
      networkMode: 'always',
      staleTime: 10_000,
      retry: (failures, error) =>
        failures < 2 && error instanceof ProblemError && error.problem.code === 'DESK_UNREACHABLE',
      retryDelay: 600,
    },
    mutations: { networkMode: 'always', retry: false },
  },
})

export function App() {
  return (
    <QueryClientProvider client={client}>
      <Switch>
        <Route path="/gauges/:code?">
          <GaugesScreen />
        </Route>
        <Route path="/settings">
          <SettingsScreen />
        </Route>
        <Route>
          <TodayScreen />
        </Route>
      </Switch>
    </QueryClientProvider>
  )
}
