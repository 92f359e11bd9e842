// The first visit: look around, begin empty, or bring a season in.
export default function WelcomePage(_props: { step: string }) {
  return <h1 className="season-title">Start</h1>;
}
