import { MutationCache, QueryCache, QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { Route, Switch } from 'wouter'
import { whoKey } from '../api/access.ts'
import { ProblemError } from '../api/problemError.ts'
import { DrillTryScreen } from './DrillTryScreen.tsx'
import { GaugesScreen } from './GaugesScreen.tsx'
import { PeopleScreen } from './PeopleScreen.tsx'
import { ScreenGuard } from './ScreenGuard.tsx'
import { SettingsScreen } from './SettingsScreen.tsx'
import { SignInGate } from './SignInGate.tsx'
import { SignInScreen } from './SignInScreen.tsx'
import { SiteScreen } from './SiteScreen.tsx'
import { TodayScreen } from './TodayScreen.tsx'
import { UrgentScreen } from './UrgentScreen.tsx'
import { UrgentWatch } from './UrgentWatch.tsx'

/** The desk is on this computer: it is asked even when the browser believes to be offline. */
const client: QueryClient = new QueryClient({
  queryCache: new QueryCache({ onError: askAgainWhoIsIn }),
  mutationCache: new MutationCache({ onError: askAgainWhoIsIn }),
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

/** A session has ended while the page was open: the gate finds out, and asks to sign in. */
function askAgainWhoIsIn(error: Error): void {
  if (error instanceof ProblemError && error.problem.code === 'SIGN_IN_NEEDED') {
    void client.invalidateQueries({ queryKey: whoKey })
  }
}

export function App() {
  return (
    <QueryClientProvider client={client}>
      <Switch>
        <Route path="/sign-in">
          <SignInScreen />
        </Route>
        <Route>
          <SignInGate>
            <UrgentWatch />
            <ScreenGuard>
              <Switch>
                <Route path="/urgent/:report?">
                  <UrgentScreen />
                </Route>
                <Route path="/gauges/:code/site">
                  {({ code }) => <SiteScreen about={`gauge ${code}`} back={`/gauges/${code}`} />}
                </Route>
                <Route path="/people/offers/:id/site">
                  {({ id }) => <SiteScreen about={`candidate ${id}`} back={`/people/offers/${id}`} />}
                </Route>
                <Route path="/gauges/:code?">
                  <GaugesScreen />
                </Route>
                <Route path="/people/drills/try">
                  <DrillTryScreen />
                </Route>
                <Route path="/people/*?">
                  <PeopleScreen />
                </Route>
                <Route path="/settings">
                  <SettingsScreen />
                </Route>
                <Route>
                  <TodayScreen />
                </Route>
              </Switch>
            </ScreenGuard>
          </SignInGate>
        </Route>
      </Switch>
    </QueryClientProvider>
  )
}
