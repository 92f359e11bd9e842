// The house: what it brews on, when, and by which rules.
export default function HousePage() {
  return <h1 className="season-title">The house</h1>;
}
