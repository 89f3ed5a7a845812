/** One person with a set of wrenches at one station, doing what the station expects, or nearly. */
package wrenchsim.shop;
