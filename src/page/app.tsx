import { Navigation } from './shell/navigation.tsx';
import { NewVersion } from './shell/new-version.tsx';
import { useRoute } from './shell/route.ts';
import { viewOf } from './shell/views.ts';

/** The whole page: the header with its ways, and the view that the address names. */
export function App() {
  const route = useRoute();
  const { View, help } = viewOf(route);
  return (
    <>
      <button type="button" class="skip" onClick={() => document.getElementById('main')?.focus()}>
        To the content
      </button>
      <Navigation route={route} />
      <NewVersion />
      <main id="main" tabIndex={-1} class={`view-${route.name || 'practise'}`}>
        <View key={route.name} route={route} />
        {help !== undefined && (
          <p class="help-link">
            <a href={`#/help/${help}`}>Help on this page</a>
          </p>
        )}
      </main>
    </>
  );
}
