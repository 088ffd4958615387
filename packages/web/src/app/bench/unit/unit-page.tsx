export function UnitPage({ unit }: { readonly unit: string }) {
  return (
    <div className="currents-body">
      <h2>{unit}</h2>
    </div>
  );
}
