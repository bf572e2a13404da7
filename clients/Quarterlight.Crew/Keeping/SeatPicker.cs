using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Finds the seats of one car in what was written.</summary>
/// <param name="seats">Seats of the car.</param>
/// <param name="driverOnLeft">True in a left-hand-drive car.</param>
internal sealed class SeatPicker(IReadOnlyList<Seat> seats, bool driverOnLeft)
{
    /// <summary>Seats in words that can be written.</summary>
    public string All => string.Join(", ", seats.Select(s => Wording.Wordings.Seat(s.Id)));

    /// <summary>Seats of the car.</summary>
    public IReadOnlyList<Seat> Seats => seats;

    /// <summary>The seat of that id; null when the car has none.</summary>
    public Seat? Find(string seatId) => seats.FirstOrDefault(s => s.Id == seatId);

    /// <summary>Seats of this car that a mention can mean.</summary>
    public IReadOnlyList<Seat> Meant(SeatMention mention) => [.. mention.SeatIds(driverOnLeft).Select(Find).OfType<Seat>()];
}
