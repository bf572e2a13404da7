namespace Quarterlight.Cabin;

/// <summary>Seat ids as people say them.</summary>
public static class SeatWords
{
    /// <summary>Such as "front passenger's" for front-passenger or "rear left" for rear-left.</summary>
    public static string Of(string seatId) => seatId switch
    {
        "driver" => "driver's",
        "front-passenger" => "front passenger's",
        "front-centre" => "front centre",
        _ => seatId.Replace('-', ' '),
    };
}
